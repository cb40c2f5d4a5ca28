// What to measure next after one test: a short list by what was found, the most useful first.
// A test that is unsafe or pointless on this engine is never proposed.

import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment, NextTest, TestAssessment } from "./assessment.ts";

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;

/** Minutes and texts are common practice, no source. */
export const nextTests = (
  record: EngineRecord,
  test: Test,
  { trust, cylinders, apart }: Pick<TestAssessment, "trust" | "cylinders" | "apart">,
): readonly NextTest[] => {
  const codes = new Set(trust.reasons.map(({ code }) => code));
  const low = cylinders.filter(
    (cylinder) => cylinder.standing === "lagging" || cylinder.standing === "suspect",
  );
  const labels = listed(low.map(({ label }) => label));
  const list: NextTest[] = [];
  const conditions = [
    ...(codes.has("too-slow") || codes.has("slow") ? ["charge the battery"] : []),
    ...(codes.has("throttle-closed") ? ["block the throttle wide open"] : []),
    ...(codes.has("release-active") ? ["defeat the compression release"] : []),
  ];
  if (conditions.length > 0)
    list.push({ code: "conditions", text: `${listed(conditions)}, then test again`, minutes: 20 });
  if (codes.has("cold"))
    list.push({ code: "retest-warm", text: "run it warm and test again the same day", minutes: 45 });
  if (codes.has("pegged") || codes.has("all-pegged"))
    list.push({ code: "second-gauge", text: "the same cylinders with a gauge of higher range", minutes: 10 });
  if (trust.code === "void")
    return list.length > 0 ? list : [{ code: "repeat", text: "make the whole test again", minutes: 20 }];
  const suspects = low.filter(({ standing }) => standing === "suspect").map(({ label }) => label);
  if (suspects.length > 0 || codes.has("repeats-apart") || codes.has("doubtful-cell"))
    list.push({
      code: "repeat",
      text: `read ${suspects.length > 0 ? listed(suspects) : "the doubtful ones"} again, twice, before you believe it`,
      minutes: 5,
    });
  if (low.length === 0 && apart === "wider")
    list.push({ code: "repeat", text: "read every cylinder again, twice", minutes: 12 });
  if (low.length > 0) list.push(...forLow(record, test, labels, cylinders));
  return list;
};

const forLow = (
  record: EngineRecord,
  test: Test,
  labels: string,
  cylinders: readonly CylinderAssessment[],
): NextTest[] => {
  const { engine } = record;
  const done = new Set<string>(test.rows.map(({ what }) => what));
  const wetAllowed =
    engine.ignition === "spark" ? engine.wetTest?.allowed !== false : engine.wetTest?.allowed === true;
  const control = cylinders.find(({ standing }) => standing === "even")?.label;
  const list: NextTest[] = [];
  if (wetAllowed && !done.has("wet") && done.has("dry"))
    list.push({
      code: "wet",
      text: `oil test on ${labels}${control === undefined ? "" : `, with ${control} as control`}`,
      minutes: 10,
    });
  if (!done.has("leak-down"))
    list.push({
      code: "leak-down-and-listen",
      text: `leak-down on ${labels}: listen at intake, exhaust and oil filler`,
      minutes: 25,
    });
  if (!done.has("dry")) list.push({ code: "cranking", text: "cranking test of every cylinder", minutes: 12 });
  return list;
};
