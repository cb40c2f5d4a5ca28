// Can a test be trusted? Void, doubtful or trusted, each with its reasons; what was not recorded is listed apart,
// with what it would settle, and makes no test doubtful by itself.

import type { EngineRecord, Test } from "../record/index.ts";
import { median, pooledRepeatability, rangeUpperTail } from "../statistics/index.ts";
import { type CylinderValue, type KindValues, valuesOf } from "./values.ts";
import { type TrustReasonCode, trustWords } from "./trust-words.ts";

export type TrustCode = "trusted" | "doubtful" | "void";

export interface TrustReason {
  readonly code: TrustReasonCode;
  readonly weight: "void" | "doubtful";
  readonly text: string;
  /** What to do about it. */
  readonly mend: string;
}

export interface Trust {
  readonly code: TrustCode;
  readonly reasons: readonly TrustReason[];
  /** What was not recorded, each with what it would settle. */
  readonly missing: readonly string[];
}

type Judge = (view: TrustView) => TrustReason | undefined;

/** What all tests of an engine are judged by: worked out once, handed along. */
export interface EngineFigures {
  /** Scatter of one reading, ln units: the engine's own repeats blended with the usual 1.5 %. */
  readonly repeatability: ReturnType<typeof pooledRepeatability>;
  /** The speed that readings are held against: the maker's, else the median of the engine's tests [rpm]. */
  readonly referenceSpeed: number | undefined;
}

export const figuresOf = (record: EngineRecord): EngineFigures => ({ repeatability: ownRepeatability(record), referenceSpeed: referenceSpeed(record) });

interface TrustView {
  readonly figures: EngineFigures;
  readonly record: EngineRecord;
  readonly test: Test;
  readonly dry: KindValues | undefined;
  /** All tests of the engine but this one that are not set aside. */
  readonly others: readonly Test[];
}

const reason = <C extends TrustReasonCode>(weight: TrustReason["weight"], code: C, facts: Parameters<(typeof trustWords)[C]>[0]): TrustReason => {
  const words = (trustWords[code] as (facts: unknown) => { text: string; mend: string })(facts);
  return { code, weight, ...words };
};

const referenceSpeed = (record: EngineRecord): number | undefined => {
  const maker = record.engine.compressionLimits.speed;
  if (maker !== undefined) return maker;
  const speeds = record.tests.flatMap((test) => (test.setAside === undefined && test.conditions.crankSpeed !== undefined ? [test.conditions.crankSpeed] : []));
  return speeds.length === 0 ? undefined : median(speeds);
};

const throttle: Judge = ({ record, test }) =>
  record.engine.ignition === "spark" && test.conditions.throttle === "closed" ? reason("void", "throttle-closed", {}) : undefined;

const release: Judge = ({ record, test, others }) => {
  if (test.conditions.release !== "active") return undefined;
  const against = others.some(({ conditions }) => conditions.release === "defeated") || record.engine.compressionLimits.minimum !== undefined;
  return against ? reason("void", "release-active", {}) : undefined;
};

const wrongStroke: Judge = ({ record, test }) => {
  const at = (test.heard ?? []).flatMap((heard, i) => {
    const places = new Set((heard ?? []).map(({ place }) => place));
    return places.has("intake") && places.has("exhaust") ? [record.engine.cylinders[i] ?? ""] : [];
  });
  return at.length === 0 ? undefined : reason("void", "wrong-stroke", { cylinders: at });
};

const taken = (values: KindValues | undefined): CylinderValue[] => (values?.cells ?? []).filter((cell) => cell !== undefined);

const pegged: Judge = ({ record, dry }) => {
  const cells = taken(dry);
  const at = (dry?.cells ?? []).flatMap((cell, i) => (cell?.pegged === true ? [record.engine.cylinders[i] ?? ""] : []));
  if (at.length === 0) return undefined;
  return at.length === cells.length ? reason("void", "all-pegged", {}) : reason("doubtful", "pegged", { cylinders: at });
};

const doubtfulCell: Judge = ({ record, dry }) => {
  const at = (dry?.cells ?? []).flatMap((cell, i) => (cell?.doubtful === true ? [record.engine.cylinders[i] ?? ""] : []));
  return at.length === 0 ? undefined : reason("doubtful", "doubtful-cell", { cylinders: at });
};

const slow: Judge = ({ figures, test, dry }) => {
  const speeds = [test.conditions.crankSpeed, ...(test.perCylinder.speed ?? [])].filter((speed) => speed !== undefined);
  if (dry === undefined || speeds.length === 0) return undefined;
  const slowest = Math.min(...speeds);
  if (slowest < 100) return reason("void", "too-slow", { rpm: slowest });
  const reference = figures.referenceSpeed;
  return reference !== undefined && slowest < 0.8 * reference ? reason("doubtful", "slow", { rpm: slowest, reference }) : undefined;
};

const isCold = (test: Test): boolean => test.conditions.engineTemp === "cold" || (test.conditions.engineTemperature ?? 999) < 313.15;
const isWarm = (test: Test): boolean => test.conditions.engineTemp === "warm" || (test.conditions.engineTemperature ?? 0) >= 333.15;

const cold: Judge = ({ record, test, others }) => {
  if (!isCold(test)) return undefined;
  const { minimum, new: asNew } = record.engine.compressionLimits;
  if (others.some(isWarm)) return reason("doubtful", "cold", { against: "the others were warm" });
  return minimum !== undefined || asNew !== undefined ? reason("doubtful", "cold", { against: "the maker's figures are for a warm engine, unless the manual says cold" }) : undefined;
};

const strokes: Judge = ({ test }) => {
  const counted = (test.perCylinder.strokes ?? []).filter((count) => count !== undefined);
  const [least, most] = [Math.min(...counted), Math.max(...counted)];
  return counted.length > 1 && least !== most ? reason("doubtful", "strokes-differ", { least, most }) : undefined;
};

const seller: Judge = ({ test }) => (test.by?.trim().toLowerCase() === "seller" ? reason("doubtful", "seller", {}) : undefined);

/** From every pair of repeats in the engine's dry tests. */
const ownRepeatability = (record: EngineRecord): ReturnType<typeof pooledRepeatability> =>
  pooledRepeatability(
    record.tests
      .filter(({ setAside }) => setAside === undefined)
      .flatMap((test) => taken(valuesOf(test, "dry")))
      .filter((cell) => !cell.pegged && cell.readings.length > 1 && cell.readings.every((value) => value > 0))
      .map((cell) => cell.readings.map(Math.log)),
  );

/** Repeats of one cylinder further apart than chance brings once in 20 times: the studentised range of m readings. */
const repeats: Judge = ({ record, figures, dry }) => {
  const s = figures.repeatability.blended;
  const apart = (dry?.cells ?? []).flatMap((cell, i) => {
    if (cell === undefined || cell.readings.length < 2) return [];
    const [low, high] = [Math.min(...cell.readings), Math.max(...cell.readings)];
    const q = low > 0 ? Math.log(high / low) / s : high > 0 ? Infinity : 0;
    return q === Infinity || rangeUpperTail(q, cell.readings.length) < 0.05
      ? [{ label: record.engine.cylinders[i] ?? "", share: low > 0 ? high / low - 1 : 1 }]
      : [];
  });
  return apart.length === 0 ? undefined : reason("doubtful", "repeats-apart", { apart });
};

const judges: readonly Judge[] = [throttle, release, wrongStroke, slow, pegged, doubtfulCell, cold, strokes, seller, repeats];

/** Judges one test of an engine. */
export const judgeTrust = (record: EngineRecord, test: Test, figures: EngineFigures = figuresOf(record)): Trust => {
  const others = record.tests.filter((other) => other !== test && other.setAside === undefined);
  const view: TrustView = { record, test, figures, others, dry: valuesOf(test, "dry") };
  const reasons = judges.flatMap((judge) => judge(view) ?? []);
  const code = reasons.some(({ weight }) => weight === "void") ? "void" : reasons.length > 0 ? "doubtful" : "trusted";
  return { code, reasons, missing: missingOf(view) };
};

const missingOf = ({ record, test, dry }: TrustView): string[] => {
  const { conditions } = test;
  const { engine } = record;
  const cranked = dry !== undefined;
  const spark = engine.ignition === "spark";
  const lists: readonly (readonly [boolean, string])[] = [
    [cranked && conditions.crankSpeed === undefined, conditions.crankVolts === undefined ? "cranking speed (a tired battery lowers all, a leaking cylinder most)" : "cranking speed (the volts alone do not tell it)"],
    [cranked && conditions.altitude === undefined && conditions.stationPressure === undefined, "altitude or barometer (thin air lowers all readings alike, 3.5 % each 1000 ft)"],
    [conditions.engineTemp === undefined && conditions.engineTemperature === undefined, "engine temperature (cold reads some 10 % lower)"],
    [cranked && spark && conditions.throttle === undefined, "throttle (closed, it lowers all)"],
    [cranked && conditions.plugsOut === undefined && engine.cylinders.length > 1, "plugs out, all or one (it changes the cranking speed)"],
    [cranked && conditions.strokes === undefined && test.perCylinder.strokes === undefined, "strokes (too few stop short of the final reading)"],
    [cranked && engine.compressionRelease !== "none" && engine.compressionRelease !== "unknown" && conditions.release === undefined, "compression release, active or defeated"],
    [cranked && dry.gauge === undefined, "gauge (another gauge may read 3 % off; the others of this test are not touched)"],
  ];
  return lists.filter(([lacks]) => lacks).map(([, text]) => text);
};
