// What was stated to `expect`, as plain numbers and where each came from: typed, else in the engine's file. Nothing is a
// quantity yet, so that what cannot be is refused in words and not by its maker.

import type { EngineRecord, LogbookFacts, StatedNumbers } from "@sealtrend/core/parts";
import { type Args, type Fault, Stop } from "../../command.ts";
import { usageFault } from "../usage.ts";
import { type QuantityOption, type Typed, plainTyped, quantitiesTyped } from "./expect-options.ts";

/** Where a size came from: the command line or engine.json. */
export type Source = "typed" | "engine";

/** An engine of a logbook, to fill what was not typed. */
export interface FromLogbook {
  readonly record: EngineRecord;
  readonly facts: LogbookFacts;
}

export type StatedField = keyof StatedNumbers;

export interface Stated {
  /** SI; without what nobody stated, but always with the compression ratio. */
  readonly numbers: StatedNumbers & { readonly compressionRatio: number };
  readonly sources: Readonly<Partial<Record<StatedField, Source>>>;
  readonly typed: Typed;
}

/** The option of each field that has one of another name. */
const optionNames: Readonly<Partial<Record<string, string>>> = {
  compressionRatio: "compression-ratio",
  intakeCloses: "intake-closes",
  leak: "leak-area",
  airTemperature: "air",
  airPressure: "station-pressure",
};
export const optionOf = (field: string): string => optionNames[field] ?? field;

/** How a field was typed; undefined where it was not, or is no quantity. */
export const typedOf = (typed: Typed, field: string): Typed[QuantityOption] =>
  typed[optionOf(field) as QuantityOption];

/** @throws Stop 2 with every value that cannot be read, or where the compression ratio is missing */
export const statedOf = (args: Args, book: FromLogbook | undefined): Stated => {
  const { typed, faults } = quantitiesTyped(args);
  const ratio = plainTyped(args, "compression-ratio", "a number such as 10, that is 10:1");
  const gamma =
    args.text("gamma") === "variable"
      ? undefined
      : plainTyped(args, "gamma", "variable, or a number such as 1.4");
  const wrong = [...faults, ...[ratio, gamma].filter(isFault)];
  if (wrong.length > 0) throw new Stop(2, wrong);
  const engine = book?.record.engine;
  const kept: StatedNumbers = { ...engine?.geometry, ...defined({ speed: engine?.compressionLimits.speed }) };
  const given: StatedNumbers = defined({
    compressionRatio: asNumber(ratio),
    gamma: asNumber(gamma),
    bore: typed.bore?.si,
    stroke: typed.stroke?.si,
    rod: typed.rod?.si,
    intakeCloses: typed["intake-closes"]?.si,
    speed: typed.speed?.si,
    leak: typed["leak-area"]?.si,
    wall: typed.wall?.si,
    start: typed.start?.si,
    airTemperature: typed.air?.si,
    hose: typed.hose?.si,
  });
  const compressionRatio = given.compressionRatio ?? kept.compressionRatio;
  if (compressionRatio === undefined) throw ratioMissing(book);
  const from = (numbers: StatedNumbers, source: Source) =>
    Object.fromEntries(Object.keys(numbers).map((field) => [field, source]));
  return {
    numbers: { ...kept, ...given, compressionRatio },
    sources: { ...from(kept, "engine"), ...from(given, "typed") },
    typed,
  };
};

const isFault = (value: number | Fault | undefined): value is Fault => typeof value === "object";
const asNumber = (value: number | Fault | undefined): number | undefined =>
  typeof value === "number" ? value : undefined;

/** The record without the fields that are not known. */
export const defined = <T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };

const ratioMissing = (book: FromLogbook | undefined): Stop =>
  new Stop(2, [
    usageFault(
      "ratio-missing",
      book === undefined
        ? "no compression ratio, which nothing can stand in for"
        : `${book.record.engine.id} has no compression ratio, which nothing can stand in for`,
      "the ratio from the manual, such as 10 (that is 10:1)",
      book === undefined
        ? "sealtrend expect --compression-ratio 10"
        : `sealtrend engine set ${book.record.engine.id} geometry.compressionRatio 8.5`,
    ),
  ]);
