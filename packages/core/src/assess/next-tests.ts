// What to measure next after one test: a short list by what was found, the most useful first.
// A test that is unsafe or pointless on this engine is never proposed.

import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment, NextTest, TestAssessment } from "./assessment.ts";
import { diagnosedTests, withWorth } from "./causes/diagnosed-tests.ts";
import { heardEvidence } from "./causes/heard-evidence.ts";
import { type TestFacts, breather, testText } from "./causes/test-texts.ts";
import { isWorthExplaining } from "./causes/worth-explaining.ts";
import { isWarm } from "./trust/cold.ts";

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;
const labelsOf = (some: readonly CylinderAssessment[]): string => listed(some.map(({ label }) => label));

type Found = Pick<TestAssessment, "trust" | "cylinders" | "apart" | "high" | "oil" | "diagnosis">;

/** What spoils the day and what is more often the gauge or the hand than the engine goes first, by plain rules; the rest as
 *  the diagnosis ranks it. Minutes and texts are common practice, no source. */
export const nextTests = (record: EngineRecord, test: Test, found: Found): readonly NextTest[] => {
  if (test.setAside !== undefined) return afterSetAside(record, test);
  const first = forTheDay(found);
  const [stroke] = found.trust.reasons.filter(({ code }) => code === "wrong-stroke");
  const again = stroke === undefined ? [] : [repeat(stroke.mend, 10)];
  if (found.trust.voids === "all")
    return first.length + again.length > 0 ? [...first, ...again] : [repeat("make the whole test again", 20)];
  const low = found.cylinders.filter(({ standing }) => isLow(standing));
  const plain = [
    ...first,
    ...again,
    ...toCheck(found, low),
    ...toListen(record, low),
    ...toReadAgain(found, low),
    ...toLookAt(low),
    ...toReIndex(record, test, found),
  ].map((next) => withWorth(next, found.diagnosis));
  return [...plain, ...forCauses(record, test, { ...found, low, plain })];
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

/** Low without a leak: nothing to blow air into. */
const toLookAt = (low: readonly CylinderAssessment[]): readonly NextTest[] => {
  const tight = low.filter(({ lowWithoutLeak }) => lowWithoutLeak === true);
  return tight.length === 0
    ? []
    : [repeat(`look at valve lift, timing, intake and hose of ${labelsOf(tight)}, then read again`, 30)];
};

/** Air at a neighbour comes through the gasket, or through a valve and a manifold that both share.
 *  @source handbook/trade.md C2 (the trap), C5 */
const toReIndex = (record: EngineRecord, test: Test, { trust, diagnosis }: Found): readonly NextTest[] => {
  const neighbour = neighbourOf(record, test, trust);
  const { porting, leakDownTest } = record.engine;
  if (neighbour === undefined || porting !== "valves" || leakDownTest?.allowed === false) return [];
  if (diagnosis === undefined) return [];
  const facts = { engine: record.engine, labels: neighbour.label, neighbour } as const;
  const code = "re-index-the-neighbour";
  const text = testText({ code, action: "" }, { ...facts, leaking: "", control: undefined, reach: "low" });
  return [{ code, text, minutes: 10 }];
};

/** The first cylinder whose air was heard, not faintly, at a neighbour that was named. */
const neighbourOf = (record: EngineRecord, test: Test, trust: Found["trust"]): TestFacts["neighbour"] =>
  heardEvidence({ record, test, trust }).flatMap((heard = [], i) =>
    heard.flatMap(({ place, faint, neighbour: at }) => {
      const label = record.engine.cylinders[i];
      return place === "neighbour" && !faint && at !== undefined && label !== undefined
        ? [{ label, at }]
        : [];
    }),
  )[0];

/** What would tell the causes apart. Nothing where all is even and nothing of the whole engine is likely. */
const forCauses = (
  record: EngineRecord,
  test: Test,
  found: Found & { readonly low: readonly CylinderAssessment[]; readonly plain: readonly NextTest[] },
): readonly NextTest[] => {
  const { diagnosis, plain, high, low } = found;
  if (diagnosis === undefined || !isWorthExplaining(found)) return [];
  // whether one reads high or all the others have lost must be known first
  if (high !== undefined && low.length === 0) return [];
  const facts = factsOf(record, found);
  const isOilUseless = high !== undefined || (low.length > 0 && facts.leaking === "");
  const pointless = [
    ...plain.map(({ code }) => code),
    ...(isWarm(test) ? ["retest-warm"] : []),
    ...(isOilUseless ? ["wet"] : []),
    ...(isDead(found) ? ["first-stroke"] : []),
  ];
  return diagnosedTests(diagnosis, facts, pointless);
};

/** What holds nothing has no first stroke either. */
const isDead = ({ cylinders, diagnosis }: Found): boolean =>
  cylinders[diagnosis?.target ?? 0]?.pressures.dry?.value === 0;

const factsOf = (
  { engine }: EngineRecord,
  { low, cylinders, high, diagnosis }: Found & { readonly low: readonly CylinderAssessment[] },
): TestFacts => {
  const flagged = low.filter(({ flagged: out, leakDown }) => out || isLow(leakDown?.standing));
  const standOut = flagged.length > 0 ? flagged : low;
  const sound = cylinders.find(({ standing }) => standing === "even");
  const control = sound ?? (flagged.length > 0 ? low.find((one) => !flagged.includes(one)) : undefined);
  const target = cylinders[diagnosis?.target ?? 0]?.label ?? "";
  return {
    engine,
    labels: standOut.length > 0 ? labelsOf(standOut) : target,
    leaking: labelsOf(standOut.filter(({ lowWithoutLeak }) => lowWithoutLeak !== true)),
    control: standOut.length > 0 ? control?.label : undefined,
    reach: high === undefined && standOut.length > 0 ? "low" : "every",
    neighbour: undefined,
  };
};
