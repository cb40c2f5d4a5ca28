// What the rows of a test say of the day, brought together: by test, and by gauge where two of them differ.

import { absolutePressure, gaugePressure, length, speed, temperature } from "../quantity/index.ts";
import { type Stated, wordColumns } from "./conditions.ts";
import type { Draft } from "./draft.ts";
import type { RowView } from "./row-view.ts";
import type { Conditions } from "./types.ts";

const same = (a: number | string, b: number | string): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-3 * Math.max(1, Math.abs(a))
    : a === b;

/** Brings the statements of a test's rows together. Rows of two gauges may differ: that is a comparison on one warm
 *  engine, and the gauge whose name comes first then speaks for the test; a row without a gauge speaks for all. */
export const agreedConditions = (test: string, stated: readonly Stated[]): Conditions => {
  const said: Said[] = [];
  for (const one of stated) {
    const gauge = one.row.text("gauge");
    const own = firstOf(said, one.key, gauge);
    const ofAll = firstOf(said, one.key, "");
    const rival = gauge === "" && ofAll === undefined ? rivalAmong(said, one) : rivalAmong([own, ofAll], one);
    if (rival === undefined) {
      if (own === undefined) said.push({ gauge, first: one });
    } else if (rival.row === one.row)
      one.row.fault(one.column, "condition-twice", { first: rival.column, second: one.column });
    else disagree(one.row, one.column, test, rival.row, rival.column);
  }
  const spokesmen = new Map<keyof Conditions, Said>();
  for (const one of said) {
    const other = spokesmen.get(one.first.key);
    if (other === undefined || one.gauge < other.gauge) spokesmen.set(one.first.key, one);
  }
  return branded((key) => spokesmen.get(key)?.first.value);
};

const firstOf = (said: readonly Said[], key: keyof Conditions, gauge: string): Said | undefined => {
  for (const one of said) if (one.first.key === key && one.gauge === gauge) return one;
  return undefined;
};

/** The first of them that says something else of the same. */
const rivalAmong = (said: readonly (Said | undefined)[], one: Stated): Stated | undefined => {
  for (const other of said)
    if (other?.first.key === one.key && !same(other.first.value, one.value)) return other.first;
  return undefined;
};

/** The first that the rows of one gauge say of one condition. */
interface Said {
  readonly gauge: string;
  readonly first: Stated;
}

/** What the rows of each gauge state, over what the test as a whole does; undefined where no two gauges differ.
 *  @param agreed - of the same rows */
export const conditionsByGauge = (
  agreed: Conditions,
  stated: readonly Stated[],
): Readonly<Record<string, Conditions>> | undefined => {
  const [first] = stated;
  if (stated.every(({ row }) => row === first?.row)) return undefined;
  const own = (gauge: string): Conditions => {
    const said = stated.filter(({ row }) => row.text("gauge") === gauge);
    return { ...agreed, ...branded((key) => said.findLast((one) => one.key === key)?.value) };
  };
  const names = new Set(stated.map(({ row }) => row.text("gauge")));
  names.delete("");
  if (names.size < 2) return undefined;
  const named = stated.filter(({ row }) => row.text("gauge") !== "");
  const differ = named.some((one) =>
    named.some((other) => one.key === other.key && !same(one.value, other.value)),
  );
  return differ ? Object.fromEntries([...names].map((name) => [name, own(name)])) : undefined;
};

/** Notes that two rows of a test say different things. */
export const disagree = (
  row: RowView,
  column: string,
  test: string,
  other: RowView,
  otherColumn = column,
): void => {
  const facts = { test, column, here: row.text(column), there: other.text(otherColumn), line: other.line };
  row.fault(column, "test-disagrees", facts);
};

/** Brands every number by what it is. */
const branded = (valueOf: (key: keyof Conditions) => Stated["value"] | undefined): Conditions => {
  const number = (key: keyof Conditions): number | undefined => {
    const value = valueOf(key);
    return typeof value === "number" ? value : undefined;
  };
  const word = <W extends string>(key: keyof Conditions, words: readonly W[]): W | undefined => {
    const value = valueOf(key);
    return value === undefined ? undefined : words.find((one) => one === value);
  };
  const day: Draft<Conditions> = {};
  const altitude = number("altitude");
  if (altitude !== undefined) {
    day.altitude = length(altitude);
    day.altitudeFrom = "test";
  }
  const station = number("stationPressure");
  if (station !== undefined) day.stationPressure = absolutePressure(station);
  const qnh = number("qnh");
  if (qnh !== undefined) day.qnh = absolutePressure(qnh);
  const air = number("airTemperature");
  if (air !== undefined) day.airTemperature = temperature(air);
  const crankSpeed = number("crankSpeed");
  if (crankSpeed !== undefined) day.crankSpeed = speed(crankSpeed);
  const crankVolts = number("crankVolts");
  if (crankVolts !== undefined) day.crankVolts = crankVolts;
  const strokes = number("strokes");
  if (strokes !== undefined) day.strokes = strokes;
  const engineTemp = word("engineTemp", wordColumns.engine_temp);
  if (engineTemp !== undefined) day.engineTemp = engineTemp;
  const engineTemperature = number("engineTemperature");
  if (engineTemperature !== undefined) day.engineTemperature = temperature(engineTemperature);
  const throttle = word("throttle", wordColumns.throttle);
  if (throttle !== undefined) day.throttle = throttle;
  const plugsOut = word("plugsOut", wordColumns.plugs_out);
  if (plugsOut !== undefined) day.plugsOut = plugsOut;
  const release = word("release", wordColumns.release);
  if (release !== undefined) day.release = release;
  const regulated = number("regulated");
  if (regulated !== undefined) day.regulated = gaugePressure(regulated);
  const master = number("master");
  if (master !== undefined) day.master = gaugePressure(master);
  const lost = number("masterLost");
  if (lost !== undefined) day.masterLost = lost / 100;
  return day;
};
