// Causes and chances in words.

import { type Diagnosis, type TestAssessment, shippedFaults } from "@sealtrend/core/parts";
import { joined } from "../words.ts";

/** Each with where it is: `3`, `2 and 3`, `all`. */
const phrases: Readonly<Partial<Record<string, (where: string) => string>>> = {
  "no-fault": (where) => `no fault in ${where}`,
  "worn-rings-or-bore": (where) => `worn rings or bore in ${where}`,
  "broken-ring-or-piston": (where) => `a broken ring or piston in ${where}`,
  "stuck-rings": (where) => `stuck rings in ${where}`,
  "exhaust-valve": (where) => `a leaking exhaust valve in ${where}`,
  "intake-valve": (where) => `a leaking intake valve in ${where}`,
  "bent-valve": (where) => `a bent valve in ${where}`,
  "sticking-valve": (where) => `a valve that sticks, or dirt on its seat, in ${where}`,
  "tight-lash": (where) => `valve lash too tight in ${where}`,
  "gasket-to-neighbour": (where) => `the head gasket between ${where}`,
  "gasket-to-coolant": (where) => `the head gasket to the coolant at ${where}`,
  crack: (where) => `a crack at ${where}`,
  "intake-lobe": (where) => `a worn intake lobe, or its lifter, in ${where}`,
  "intake-valve-not-opening": (where) => `an intake valve that does not open in ${where}`,
  "exhaust-lobe": (where) => `a worn exhaust lobe, or a valve that does not open, in ${where}`,
  "cam-retarded": (where) => `late cam timing in ${where}`,
  "cam-advanced": (where) => `early cam timing in ${where}`,
  "washed-or-dry-bores": (where) => `washed or dry bores in ${where}`,
  carbon: (where) => `carbon or liquid in ${where}`,
  "throttle-or-filter": () => "a throttle or filter that was shut",
  "slow-cranking": () => "slow cranking",
  "gauge-or-hose": () => "the gauge, its hose or its adapter",
  "compression-release": () => "the compression release",
  "plug-seal": (where) => `a leak at plug or adapter of ${where}`,
  "valve-spring": (where) => `a weak valve spring in ${where}`,
  "low-compression-ratio": (where) => `a low compression ratio in ${where} (bent rod, wrong part)`,
  "none-of-these": () => "none of the causes we know",
};

/** In the middle of a sentence. A cause that the tables in use call otherwise than ours goes by its name there.
 *  @param places - of the cylinders it is about */
export const causeText = (
  code: string,
  places: readonly number[],
  { cylinders, faults }: Pick<TestAssessment, "cylinders" | "faults">,
): string => {
  const isAll = places.length > 1 && places.length === cylinders.length;
  return causeIn(code, isAll ? "all" : joined(places.map((place) => cylinders[place]?.label ?? "")), faults);
};

/** The same with where it is in words. */
export const causeIn = (code: string, where: string, faults: TestAssessment["faults"]): string => {
  const named = faults.causes.find((cause) => cause.code === code)?.name ?? code;
  const ours = shippedFaults().causes.find((cause) => cause.code === code)?.name;
  const phrase = named === ours ? phrases[code] : undefined;
  return phrase === undefined ? `${named} in ${where}` : phrase(where);
};

type Group = keyof Diagnosis["groups"];

/** What to look at, by what it would take. A two-stroke with ports has neither valves nor cam. */
export const groupName = (group: Group, { record }: Pick<TestAssessment, "record">): string =>
  group === "top" && record.engine.porting === "ports" ? "gasket or head" : groupNames[group];

/** In the order they are told. */
export const groupsTold: readonly Group[] = ["top", "bottom", "test", "nothing", "unlisted"];

const groupNames: Readonly<Record<Group, string>> = {
  top: "valves, gasket or cam",
  bottom: "rings, piston or bore",
  test: "the test itself, a seal or dry bores",
  nothing: "no fault",
  unlisted: "none of the causes we know",
};

/** `about 4 in 10`. */
export const chanceText = (chance: number): string =>
  chance < 0.05
    ? "less than 1 in 10"
    : chance >= 0.95
      ? "more than 9 in 10"
      : `about ${tenths(chance)} in 10`;

/** `2 to 7`, `up to 3`, `7 or more`: in 10. */
export const bandText = (low: number, high: number): string => {
  const [from, to] = [tenths(low), tenths(high)];
  if (to === "10") return from === "10" ? "nearly 10" : `${from} or more`;
  return from === "0" ? `up to ${to}` : `${from} to ${to}`;
};

const tenths = (chance: number): string => (10 * chance).toFixed(0);
