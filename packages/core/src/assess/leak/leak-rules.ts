// The leak-down readings of one test against limits: the maker's, the published ones, the master of that day.

import type { EngineRecord, Test } from "../../record/index.ts";
import { type Rule, type RuleFinding, type RuleReading, judgeLeakRules } from "../../rules/index.ts";
import type { LeakValue } from "./assess-leak-down.ts";
import { type LeakInstrument, pressuresOf, withUsualSupply } from "./leak-instrument.ts";
import { type MasterUse, isBeyondMaster, marginOf } from "./leak-master.ts";
import type { TrustCode } from "../trust/trust-reason.ts";
import { valuesOf } from "../values/values.ts";

interface Judged {
  readonly instrument: LeakInstrument;
  readonly leak: readonly (LeakValue | undefined)[];
  readonly trust: TrustCode;
}

/** With a master read that day its reading is the limit: no percent of another family is held against the cylinders, but
 *  for the maker's own. */
export const leakRules = (
  record: EngineRecord,
  test: Test,
  { sheet, judged }: { readonly sheet: readonly Rule[]; readonly judged: Judged },
): readonly RuleFinding[] => {
  const { instrument, leak } = judged;
  const readings = record.engine.cylinders.map((label, i) => readingOf(label, i, { test, judged }));
  const supply = instrument.supplies.find((one, i) => one !== undefined && leak[i] !== undefined);
  const { bore } = instrument.restrictor;
  const tester = {
    ...(bore === undefined ? {} : { restrictor: bore }),
    ...(supply === undefined ? {} : { supply }),
  };
  const masters = judged.trust === "void" ? undefined : masterRule(record, leak);
  return [
    ...judgeLeakRules(masters === undefined ? sheet : [], { readings, engine: record.engine, tester }),
    ...(masters === undefined ? [] : [masters]),
  ];
};

/** A dial's class shifts all readings alike, its division each by itself. */
const readingOf = (
  label: string,
  cylinder: number,
  { test, judged: { instrument, leak, trust } }: { readonly test: Test; readonly judged: Judged },
): RuleReading => {
  const own = leak[cylinder];
  const cell = valuesOf(test, "leak-down")?.cells[cylinder];
  if (own === undefined || cell === undefined)
    return { label, state: "not-taken", ownUncertainty: 0, commonUncertainty: 0 };
  const held = 1 - own.lost;
  const pressures = pressuresOf(withUsualSupply(instrument), cylinder, cell.value);
  const { cylinder: read = 0, supply = 1 } = pressures ?? {};
  const { uDial, uDivision } = instrument;
  const part = (u: number): number => (read > 0 ? Math.hypot(u / read, u / supply) : 0);
  const common = Math.sqrt(Math.max(0, uDial ** 2 - uDivision ** 2));
  return {
    label,
    state: cell.pegged ? "pegged" : cell.doubtful || trust === "void" ? "doubtful" : "taken",
    held,
    ownUncertainty: part(uDivision),
    commonUncertainty: part(common),
  };
};

/** The reading of the master orifice as the limit. @source Continental SB03-3 and manuals that repeat it */
const masterRule = (
  { engine }: EngineRecord,
  leak: readonly (LeakValue | undefined)[],
): RuleFinding | undefined => {
  const uses = engine.cylinders.flatMap((label, i) => {
    const master = leak[i]?.master;
    return master === undefined ? [] : [{ label, master, margin: marginOf(master) }];
  });
  if (uses.length === 0) return undefined;
  const worst = uses.toSorted((a, b) => (b.margin ?? Infinity) - (a.margin ?? Infinity))[0];
  if (worst === undefined) return undefined;
  const doubt = worst.master.kind === "margin" ? worst.master.uMargin : undefined;
  const { margin } = worst;
  return {
    id: "master",
    verdict: verdictOf(worst.master),
    holds: "fraction",
    ...(margin === undefined ? {} : { value: margin }),
    ...(doubt === undefined ? {} : { uncertainty: doubt }),
    limit: { value: 1, unit: "%", compare: "<=" },
    formula: "leak / master's leak",
    text: "no cylinder leaks more than the master orifice let by that day",
    source: "Continental, SB03-3 and manuals that repeat it, 2003",
    status: "excerpt seen",
    cylinder: worst.label,
    byCylinder: uses.map(({ label, master, margin: own }) => ({
      label,
      verdict: verdictOf(master),
      ...(own === undefined ? {} : { value: own }),
    })),
  };
};

const verdictOf = (use: MasterUse): RuleFinding["verdict"] => {
  if (use.kind === "margin" && Math.abs(use.margin - 1) < 2 * use.uMargin) return "near";
  if (use.kind === "span" && use.low <= 1 && use.high >= 1) return "near";
  if (use.kind === "at-most" && use.margin > 1) return "cannot-tell";
  return isBeyondMaster(use) ? "not-met" : "met";
};
