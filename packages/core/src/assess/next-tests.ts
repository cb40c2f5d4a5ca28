// What to measure next after one test: a short list by what was found, the most useful first.
// A test that is unsafe or pointless on this engine is never proposed.

import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment, NextTest, TestAssessment } from "./assessment.ts";
import { isLow } from "./causes/assessed.ts";
import { heardEvidence } from "./causes/heard-evidence.ts";
import { type TestFacts, breather, testText } from "./causes/test-texts.ts";
import { firstSteps } from "./first-steps.ts";
import { forCauses } from "./for-causes.ts";
import { labelsOf, listed } from "./labels.ts";
import { unreadIn, unreadText } from "./never-read.ts";
import { isLowAlike, toProveFirst } from "./prove-first.ts";
import { readAgain } from "./read-again.ts";
import { rankedTests } from "./ranked-tests.ts";
import { afterWork } from "./run-in.ts";
import { isWarm } from "./trust/cold.ts";
import type { TrustReason } from "./trust/trust-reason.ts";

type Found = Pick<
  TestAssessment,
  | "trust"
  | "cylinders"
  | "apart"
  | "high"
  | "oil"
  | "diagnosis"
  | "evidence"
  | "levelSince"
  | "levelBelow"
  | "unexplained"
>;
type Asked = Omit<NextTest, "by">;

/** What spoils the day and what is more often the gauge or the hand than the engine goes first, by plain rules; the rest as
 *  the diagnosis ranks it. Minutes and texts are common practice, no source. */
export const nextTests = (record: EngineRecord, test: Test, found: Found): readonly NextTest[] =>
  rankedTests(
    plainTests(record, test, found),
    (plain) => (isSpoilt(record, test, found) ? [] : forCauses(record, test, { ...found, plain })),
    found.diagnosis,
  );

/** Nothing in it tells of a cause, or no longer. */
const isSpoilt = (record: EngineRecord, test: Test, { trust }: Found): boolean =>
  test.setAside !== undefined || trust.voids === "all" || afterWork(record, test) !== undefined;

/** By plain rules. */
const plainTests = (record: EngineRecord, test: Test, found: Found): readonly Asked[] => {
  if (test.setAside !== undefined) return afterSetAside(record, test);
  const work = afterWork(record, test);
  if (work !== undefined) return [work];
  const first = forTheDay(found);
  const [stroke] = found.trust.reasons.filter(({ code }) => code === "wrong-stroke");
  const again = stroke === undefined ? [] : [repeat(stroke.mend, 10)];
  if (found.trust.voids === "all")
    return first.length + again.length > 0 ? [...first, ...again] : [repeat("make the whole test again", 20)];
  const low = found.cylinders.filter(isLow);
  const warming = toRunWarm(test, found);
  // where one stands out as well, running it is what tells more
  const proving = warming.length > 0 && !isLowAlike(found) ? [] : toProveFirst(record, found);
  const before = [...first, ...proving, ...warming];
  const { steps, pointless } = firstSteps(record, test, found);
  const others = [
    ...toCheck(found, low),
    ...toListen(record, low),
    ...toReadAgain(found, low),
    ...toLookAt(record, low),
    ...toReIndex(record, test, found),
    ...toReadAtAll(record, test),
  ];
  return [
    ...before.filter(({ code }, i) => before.findIndex((one) => one.code === code) === i),
    ...again,
    ...steps,
    ...(pointless === "all" ? [] : others.filter(({ code }) => !pointless.includes(code))),
  ];
};

/** Again, unless that has been done. */
const afterSetAside = ({ tests }: EngineRecord, test: Test): readonly Asked[] =>
  tests.some((other) => other !== test && other.date >= test.date && other.setAside === undefined)
    ? []
    : [repeat("make the whole test again", 20)];

/** What spoilt the test. */
const forTheDay = ({ trust }: Found): Asked[] => {
  const codes = new Set(trust.reasons.map(({ code }) => code));
  const conditions = [
    ...(codes.has("too-slow") || codes.has("slow") ? ["charge the battery"] : []),
    ...(codes.has("throttle-closed") ? ["block the throttle wide open"] : []),
    ...(codes.has("release-active") ? ["defeat the compression release"] : []),
  ];
  const list: Asked[] = [];
  if (conditions.length > 0)
    list.push({ code: "conditions", text: `${listed(conditions)}, then test again`, minutes: 20 });
  if (codes.has("cold")) list.push(warm);
  if (codes.has("pegged") || codes.has("all-pegged"))
    list.push({ code: "second-gauge", text: "the same cylinders with a gauge of higher range", minutes: 10 });
  return list;
};

const repeat = (text: string, minutes: number): Asked => ({ code: "repeat", text, minutes });

const implausible = new Set<TrustReason["code"]>(["slip", "beyond-engine", "below-engine"]);

/** What is more often the gauge or the hand than the engine. */
const toCheck = ({ trust, oil }: Found, low: readonly CylinderAssessment[]): readonly Asked[] => {
  const mistyped = trust.reasons.some(({ code }) => implausible.has(code));
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
const toListen = ({ engine }: EngineRecord, low: readonly CylinderAssessment[]): readonly Asked[] => {
  const unheard = low.filter(
    ({ heard = [], leakDown }) => heard.length === 0 && isLow(leakDown ?? {}) && !isAllLost(leakDown),
  );
  if (unheard.length === 0) return [];
  const places = `intake, exhaust, ${breather(engine)}${engine.cooling === "air" ? "" : ", coolant"}`;
  const text = `listen where the air goes on ${labelsOf(unheard)}, at top dead centre on compression: ${places}`;
  return [{ code: "leak-down-and-listen", text, minutes: 10 }];
};

const toReadAgain = (found: Found, low: readonly CylinderAssessment[]): readonly Asked[] => {
  const { trust, apart } = found;
  const codes = new Set(trust.reasons.map(({ code }) => code));
  const twice = (which: string): Asked => repeat(`read ${which} again, twice, before you believe it`, 5);
  const doubted = readAgain(found);
  const torn = low.filter(({ label, repeats }) => repeats === "contradict" && doubted.includes(label));
  // more of the same would tell no more
  if (torn.length > 0 && torn.length === doubted.length)
    return [
      repeat(`see to seal and adapter of the gauge on ${labelsOf(torn)}, then read again three times`, 10),
    ];
  if (doubted.length > 0) return [twice(listed(doubted))];
  if (codes.has("repeats-apart") || codes.has("leak-repeats-apart") || codes.has("doubtful-cell"))
    return [twice("the doubtful ones")];
  return low.length === 0 && apart === "wider" ? [repeat("read every cylinder again, twice", 12)] : [];
};

/** Not looked at is not sound. */
const toReadAtAll = (record: EngineRecord, test: Test): readonly Asked[] => {
  const unread = unreadIn(record, test);
  return unread.length === 0 ? [] : [repeat(`read ${unreadText(unread)}`, 5)];
};

/** Oil raises dry walls as it does worn rings; running brings back their own.
 *  @source handbook/trade.md C5 (worn rings beside washed or dry bores) */
const toRunWarm = (test: Test, { diagnosis }: Found): readonly Asked[] =>
  diagnosis?.leads === "cause" && diagnosis.causes[0]?.code === "washed-or-dry-bores" && !isWarm(test)
    ? [warm]
    : [];

const warm: Asked = { code: "retest-warm", text: "run it warm and test again the same day", minutes: 45 };

const isAllLost = (leakDown: CylinderAssessment["leakDown"]): boolean =>
  leakDown !== undefined && (leakDown.lost === 1 || leakDown.sizing.judgement?.kind === "no-seal");

const checkText = (noPressure: readonly CylinderAssessment[]): string => {
  const labels = labelsOf(noPressure);
  return noPressure.some(({ leakDown }) => isAllLost(leakDown))
    ? `check the adapter on ${labels}, and that the piston stands at top dead centre on compression, then again`
    : `check the adapter and its seal on ${labels}, then read again`;
};

/** Low without a leak: nothing to blow air into. What the tables have nearest; an engine without valves has no lash. */
const toLookAt = ({ engine }: EngineRecord, low: readonly CylinderAssessment[]): readonly Asked[] => {
  const tight = low.filter(({ lowWithoutLeak }) => lowWithoutLeak === true);
  if (tight.length === 0) return [];
  const labels = labelsOf(tight);
  return engine.porting === "ports"
    ? [
        {
          code: "second-gauge",
          text: `look at intake, exhaust and hose of ${labels}, then again with another gauge`,
          minutes: 30,
        },
      ]
    : [
        {
          code: "lash",
          text: `look at valve lash and lift, timing, intake and hose of ${labels}`,
          minutes: 30,
        },
      ];
};

/** Air at a neighbour comes through the gasket, or through a valve and a manifold that both share.
 *  @source handbook/trade.md C2 (the trap), C5 */
const toReIndex = (record: EngineRecord, test: Test, { trust, diagnosis }: Found): readonly Asked[] => {
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
