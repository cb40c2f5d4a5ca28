// What to measure next after one test: a short list by what was found, the most useful first.
// A test that is unsafe or pointless on this engine is never proposed.

import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment, NextTest, TestAssessment } from "./assessment.ts";

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;
const labelsOf = (some: readonly CylinderAssessment[]): string => listed(some.map(({ label }) => label));

type Found = Pick<TestAssessment, "trust" | "cylinders" | "apart" | "high" | "oil">;

/** Minutes and texts are common practice, no source. */
export const nextTests = (record: EngineRecord, test: Test, found: Found): readonly NextTest[] => {
  if (test.setAside !== undefined) return afterSetAside(record, test);
  const first = forTheDay(found);
  const [stroke] = found.trust.reasons.filter(({ code }) => code === "wrong-stroke");
  const again = stroke === undefined ? [] : [repeat(stroke.mend, 10)];
  if (found.trust.voids === "all")
    return first.length + again.length > 0 ? [...first, ...again] : [repeat("make the whole test again", 20)];
  const low = found.cylinders.filter(({ standing }) => isLow(standing));
  return [
    ...first,
    ...again,
    ...toCheck(found, low),
    ...toListen(record, low),
    ...toReadAgain(found, low),
    ...(low.length === 0 ? [] : forLow(record, test, { low, ...found })),
  ];
};

const isLow = (word: CylinderAssessment["standing"]): boolean => word === "lagging" || word === "suspect";

/** Again, unless that has been done. */
const afterSetAside = ({ tests }: EngineRecord, test: Test): readonly NextTest[] =>
  tests.some((other) => other !== test && other.date >= test.date && other.setAside === undefined)
    ? []
    : [repeat("make the whole test again", 20)];

/** What spoilt the test. */
const forTheDay = ({ trust }: Found): NextTest[] => {
  const codes = new Set(trust.reasons.map(({ code }) => code));
  const conditions = [
    ...(codes.has("too-slow") || codes.has("slow") ? ["charge the battery"] : []),
    ...(codes.has("throttle-closed") ? ["block the throttle wide open"] : []),
    ...(codes.has("release-active") ? ["defeat the compression release"] : []),
  ];
  const list: NextTest[] = [];
  if (conditions.length > 0)
    list.push({ code: "conditions", text: `${listed(conditions)}, then test again`, minutes: 20 });
  if (codes.has("cold"))
    list.push({ code: "retest-warm", text: "run it warm and test again the same day", minutes: 45 });
  if (codes.has("pegged") || codes.has("all-pegged"))
    list.push({ code: "second-gauge", text: "the same cylinders with a gauge of higher range", minutes: 10 });
  return list;
};

const repeat = (text: string, minutes: number): NextTest => ({ code: "repeat", text, minutes });

/** What is more often the gauge or the hand than the engine. */
const toCheck = ({ trust, oil }: Found, low: readonly CylinderAssessment[]): readonly NextTest[] => {
  const mistyped = trust.reasons.some(({ code }) => code === "slip" || code === "beyond-engine");
  const noPressure = low.filter(
    ({ pressures, leakDown }) => pressures.dry?.value === 0 || isAllLost(leakDown),
  );
  return [
    ...(mistyped ? [repeat("see whether the reading was mistyped: amend it, or read it again", 5)] : []),
    ...(oil?.cylinders.some(({ doubts }) => doubts.includes("fell")) === true
      ? [repeat("charge the battery, look at the gauge, then the dry and the oil readings again", 20)]
      : []),
    ...(noPressure.length > 0 ? [repeat(checkText(noPressure), 10)] : []),
  ];
};

/** Where the air of the crankcase is heard: a two-stroke with ports has no oil filler. */
const breather = ({ porting }: EngineRecord["engine"]): string =>
  porting === "ports" ? "crankcase" : "oil filler";

/** A leak-down that found a leak, and nobody wrote down where the air goes. */
const toListen = ({ engine }: EngineRecord, low: readonly CylinderAssessment[]): readonly NextTest[] => {
  const unheard = low.filter(
    ({ heard = [], leakDown }) => heard.length === 0 && isLow(leakDown?.standing) && !isAllLost(leakDown),
  );
  if (unheard.length === 0) return [];
  const places = `intake, exhaust, ${breather(engine)}${engine.cooling === "air" ? "" : ", coolant"}`;
  const text = `listen where the air goes on ${labelsOf(unheard)}, at top dead centre on compression: ${places}`;
  return [{ code: "leak-down-and-listen", text, minutes: 10 }];
};

const toReadAgain = (
  { trust, apart, high }: Found,
  low: readonly CylinderAssessment[],
): readonly NextTest[] => {
  const codes = new Set(trust.reasons.map(({ code }) => code));
  const twice = (which: string): NextTest => repeat(`read ${which} again, twice, before you believe it`, 5);
  if (high !== undefined) return [twice(listed(high))];
  const suspects = low.filter(({ standing }) => standing === "suspect");
  const close = low.every((one) => one.standing === "suspect" || isTooClose(one)) ? low : suspects;
  if (close.length > 0) return [twice(labelsOf(close))];
  if (codes.has("repeats-apart") || codes.has("leak-repeats-apart") || codes.has("doubtful-cell"))
    return [twice("the doubtful ones")];
  return low.length === 0 && apart === "wider" ? [repeat("read every cylinder again, twice", 12)] : [];
};

/** Its word comes from a limit that lies within its doubt, and no repeats confirm it. */
const isTooClose = ({ atLimit, repeats, leakDown }: CylinderAssessment): boolean =>
  (atLimit === true && repeats === undefined) || leakDown?.atLimit === true;

const isAllLost = (leakDown: CylinderAssessment["leakDown"]): boolean =>
  leakDown !== undefined && (leakDown.lost === 1 || leakDown.sizing.judgement?.kind === "no-seal");

const checkText = (noPressure: readonly CylinderAssessment[]): string => {
  const labels = labelsOf(noPressure);
  return noPressure.some(({ leakDown }) => isAllLost(leakDown))
    ? `check the adapter on ${labels}, and that the piston stands at top dead centre on compression, then again`
    : `check the adapter and its seal on ${labels}, then read again`;
};

const forLow = (
  { engine }: EngineRecord,
  test: Test,
  {
    low,
    cylinders,
    high,
  }: Pick<Found, "cylinders" | "high"> & { readonly low: readonly CylinderAssessment[] },
): readonly NextTest[] => {
  const done = new Set<string>(test.rows.map(({ what }) => what));
  const standOut = low.filter(({ flagged, leakDown }) => flagged || isLow(leakDown?.standing));
  const labels = labelsOf(standOut.length > 0 ? standOut : low);
  const wetAllowed =
    engine.ignition === "spark" ? engine.wetTest?.allowed !== false : engine.wetTest?.allowed === true;
  const sound = cylinders.find(({ standing }) => standing === "even");
  const control = (sound ?? (standOut.length > 0 ? low.find((one) => !standOut.includes(one)) : undefined))
    ?.label;
  const list: NextTest[] = [];
  const tight = low.filter(({ lowWithoutLeak }) => lowWithoutLeak === true);
  if (tight.length > 0)
    list.push(
      repeat(`look at valve lift, timing, intake and hose of ${labelsOf(tight)}, then read again`, 30),
    );
  const leaking = (standOut.length > 0 ? standOut : low).filter((one) => !tight.includes(one));
  if (leaking.length > 0 && wetAllowed && !done.has("wet") && done.has("dry") && high === undefined)
    list.push({
      code: "wet",
      text: `oil test on ${labelsOf(leaking)}${control === undefined ? "" : `, with ${control} as control`}`,
      minutes: 10,
    });
  if (!done.has("leak-down"))
    list.push({
      code: "leak-down-and-listen",
      text: `leak-down on ${high === undefined ? labels : "every cylinder"}: listen at intake, exhaust and ${breather(engine)}`,
      minutes: 25,
    });
  if (!done.has("dry")) list.push({ code: "cranking", text: "cranking test of every cylinder", minutes: 12 });
  return list;
};
