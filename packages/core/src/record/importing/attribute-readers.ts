// What a reading has beside its figure, each read from its cell once however many readings share it.

import { type Facts, type ProblemCode, problem } from "../../problem/index.ts";
import { leakKinds, pressureKinds } from "../test-rows.ts";
import type { LeakKind, PressureKind } from "../types.ts";
import { isFormula } from "../common-cells.ts";
import type { IsoDate } from "../iso-date.ts";
import { dateWays, serialDays } from "./cell-date.ts";
import { labelsByName } from "./engines-in-sheet.ts";
import { engineNamed } from "./engine-named.ts";
import type { EngineOfSheet } from "./import-map.ts";
import type { LeftWhy } from "./imported.ts";
import { labelIn } from "./label-in.ts";
import type { Bar, LeftList } from "./left-out.ts";
import { unitIn, withoutUnitAndKind } from "./heading-text.ts";
import type { SheetUnit } from "./reading-text.ts";
import { cylinderNamed, isSummary, kindNamed, plainText } from "./sheet-words.ts";
import { remembered } from "./remembered.ts";
import type { Spot } from "./sources.ts";
import { suggestEngineId } from "./suggest-engine-id.ts";
import type { ToRead } from "./to-read.ts";

/** A value, or what keeps the readings out. */
export type Attributed<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly bar: Bar };

export type AttributeReader<T> = (spot: Spot) => Attributed<T>;

export interface AttributeReaders {
  readonly engine: AttributeReader<EngineOfSheet>;
  readonly date: AttributeReader<IsoDate>;
  readonly what: AttributeReader<PressureKind | LeakKind>;
  readonly unit: AttributeReader<SheetUnit>;
  readonly take: AttributeReader<number | undefined>;
  readonly gauge: AttributeReader<string>;
  cylinder(spot: Spot, engine: EngineOfSheet): Attributed<string>;
  /** Free text; one that a spreadsheet might run is left, and "" taken. */
  freeText(spot: Spot, column: string): string;
}

/** Readers for the attributes of a map; what they cannot read goes to the list. */
export const attributeReaders = (
  left: LeftList,
  { sheet, map, columns, today }: ToRead,
): AttributeReaders => {
  const good = <T>(value: T): Attributed<T> => ({ ok: true, value });
  const barred = <C extends ProblemCode>(
    spot: Spot,
    code: C,
    facts: Facts<C>,
    why: LeftWhy = "fault",
  ): Attributed<never> => ({ ok: false, bar: left.cell(spot, code, facts, why) });
  const engines = enginesByName(map.engines);
  const strangers = new Map<string, Attributed<never>>();
  let labelsOf: ReadonlyMap<string, readonly string[]> | undefined;
  /** One fault for a name, however many rows it has. */
  const stranger = (spot: Spot): Attributed<never> => {
    const name = plainText(spot.text);
    labelsOf ??= labelsByName(sheet, map, columns);
    const facts = { text: spot.text, id: suggestEngineId(spot.text), labels: labelsOf.get(name) ?? ["1"] };
    const known = strangers.get(name) ?? barred(spot, "import-engine", facts);
    strangers.set(name, known);
    return known;
  };
  const engine = (spot: Spot): Attributed<EngineOfSheet> => {
    const { text } = spot;
    const found = engines(text);
    if (found === undefined)
      return isSummary(text) ? barred(spot, "import-summary", { text }, "summary") : stranger(spot);
    return found.engine === ""
      ? barred(spot, "import-left", { text, id: suggestEngineId(text) }, "map")
      : good(found);
  };
  const date = (spot: Spot): Attributed<IsoDate> => {
    const { text } = spot;
    const ways = dateWays(text);
    const days = [...new Set(map.dates === undefined ? ways.values() : [ways.get(map.dates)])];
    const [day] = days;
    const isOne = day !== undefined && days.length === 1;
    if (isOne && today !== undefined && day > today)
      return barred(spot, "import-later", { date: day, today });
    if (isOne) return good(day);
    const serial = serialDays(text);
    if (serial !== undefined) return barred(spot, "import-serial", { text, ...serial });
    const order = map.dates === undefined ? {} : { order: map.dates };
    return barred(spot, "import-date", { text, ...order, ways: [...new Set(ways.values())] });
  };
  const what = (spot: Spot): Attributed<PressureKind | LeakKind> => {
    const kind = kindNamed(spot.text);
    const words = [...pressureKinds, ...leakKinds];
    return kind === undefined
      ? barred(spot, "word-unknown", { column: "what", text: spot.text, words })
      : good(kind);
  };
  const unit = (spot: Spot): Attributed<SheetUnit> => {
    const found = unitIn(spot.text);
    if (found !== undefined) return good(found);
    return spot.text === ""
      ? barred(spot, "unit-missing", { text: "the readings" })
      : barred(spot, "unit-unknown", { text: spot.text, units: [...knownUnits] });
  };
  const take = (spot: Spot): Attributed<number | undefined> => {
    const [number] = /\d+/.exec(spot.text) ?? [];
    if (spot.text === "") return good(undefined);
    return number !== undefined && /^[1-9]\d?$/.test(number) && spot.text.replace(/\D/g, "") === number
      ? good(Number(number))
      : barred(spot, "take-bad", { text: spot.text });
  };
  const byEngine = new Map<EngineOfSheet, (text: string) => string | undefined>();
  const labels = (one: EngineOfSheet): ((text: string) => string | undefined) => {
    const known = byEngine.get(one) ?? remembered((text) => labelIn(text, one.cylinders));
    byEngine.set(one, known);
    return known;
  };
  const gauge = (spot: Spot): Attributed<string> =>
    isFormula(spot.text) ? barred(spot, "import-formula", { text: spot.text }) : good(spot.text);
  return {
    engine: once(engine),
    date: once(date),
    what: once(what),
    unit: once(unit),
    take: once(take),
    gauge: once(gauge),
    cylinder: (spot, one) => {
      const label = labels(one)(spot.text);
      const facts = {
        text: spot.text,
        engine: one.engine,
        labels: one.cylinders,
        ...grownTo(spot.text, one),
      };
      return label === undefined ? barred(spot, "import-cylinder", facts) : good(label);
    },
    freeText: (spot, column) => {
      if (!isFormula(spot.text)) return spot.text;
      if (spot.at !== undefined)
        left.found(spot.at.row, spot.at.column, problem("text-formula", { column }, {}, "caution"), 0);
      return "";
    },
  };
};

/** Engines by their names in the sheet; names of one engine share all its cylinders. */
const enginesByName = (engines: readonly EngineOfSheet[]): ((text: string) => EngineOfSheet | undefined) => {
  const labels = new Map<string, Set<string>>();
  for (const { engine, cylinders } of engines)
    labels.set(engine, new Set([...(labels.get(engine) ?? []), ...cylinders]));
  return engineNamed(engines.map((one) => ({ ...one, cylinders: [...(labels.get(one.engine) ?? [])] })));
};

const knownUnits = ["psi", "kPa", "bar", "MPa", "kgf/cm2", "%", "% held"] as const;

/** Remembers what the last texts gave: those of a row, those above the columns, machines and days come again and again. */
const once = <T>(read: AttributeReader<T>): AttributeReader<T> => {
  let known = new Map<string, Attributed<T>>();
  return (spot) => {
    const before = known.get(spot.text);
    if (before !== undefined) return before;
    const result = read(spot);
    if (!result.ok) return result;
    if (known.size >= mostRemembered) known = new Map();
    known.set(spot.text, result);
    return result;
  };
};
const mostRemembered = 4_096;

/** The cylinders of a recorded engine with the one that a text names; the map says how those of a new one fire. */
const grownTo = (
  text: string,
  { cylinders, ignition }: EngineOfSheet,
): { readonly grown?: readonly string[] } => {
  const label = cylinderNamed(withoutUnitAndKind(text));
  return label === undefined || ignition !== undefined ? {} : { grown: [...cylinders, label] };
};
