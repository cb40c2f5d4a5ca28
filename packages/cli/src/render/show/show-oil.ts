// What oil did to the readings, and what of it may point at the rings.

import {
  type OilDoubt,
  type OilEvidence,
  type OilRise,
  type OilTest,
  type TestAssessment,
} from "@sealtrend/core/parts";
import { typedLine } from "../../options/quote.ts";
import { clean } from "../clean.ts";
import { count, joined, percent } from "../words.ts";

/** Oil seals a bore that stands dry as it seals rings. A two-stroke with ports has no valves. */
const wordsOf = (evidence: OilEvidence, { diagnosis, record }: TestAssessment): string => {
  const isDry = diagnosis?.causes[0]?.code === "washed-or-dry-bores";
  const what = isDry ? "rings, bore or dry walls" : "rings or bore";
  const ports = record.engine.porting === "ports";
  const rival = ports ? "the gasket or the plug" : "valves";
  return {
    strong: `${what} much more likely than ${rival}`,
    rings: `${what} more likely than ${rival}`,
    weak: `a weak sign of ${isDry ? "rings or dry walls" : "rings"}`,
    none: `no sign of rings; ${ports ? "" : "a valve, "}the gasket or a broken ring would show so`,
  }[evidence];
};

/** From here on what the oil's own room adds is said beside a control too; judgement. */
const large = 0.15;

/** `Oil raised 3 by 20 %, the control 1 by 2 %: net 18 % (11 to 25 %), rings or bore more likely than valves.` A sentence
 *  a low cylinder, or one for several that say the same. */
export const oilText = (assessment: TestAssessment): string => {
  const { oil, trust } = assessment;
  if (oil === undefined || trust.voids === "all") return "";
  const beside = oil.cylinders.flatMap((rise) => besideControl(rise, oil, assessment) ?? []);
  const alone = oil.cylinders.filter(({ label }) => !beside.some((one) => one.label === label));
  return [
    ...[...new Set(beside.map(sameAs))].map((same) =>
      besideText(
        beside.filter((one) => sameAs(one) === same),
        oil,
        assessment,
      ),
    ),
    ...alone.map((rise) => riseText(rise, oil, assessment)),
    controlText(oil, assessment),
    byTwoText(oil, assessment),
  ]
    .filter((text) => text !== "")
    .join(" ");
};

interface Beside {
  readonly label: string;
  readonly verb: string;
  readonly by: string;
  readonly net: string;
  readonly says: string;
}

const sameAs = ({ verb, says }: Beside): string => `${verb} ${says}`;

/** Of a cylinder that can be held against a control. */
const besideControl = (rise: OilRise, oil: OilTest, assessment: TestAssessment): Beside | undefined => {
  const { label, evidence, net, doubts } = rise;
  if (evidence === undefined || net === undefined || oil.controlRise === undefined) return undefined;
  if (doubts.includes("too-much-oil") || doubts.includes("fell")) return undefined;
  return {
    label,
    by: `${label} by ${percent(Math.abs(rise.rise))}`,
    verb: verbOf(rise.rise),
    net: `${signed(net)}${rangeText(rise)}`,
    says: `${saysText(rise, evidence, assessment)}${tailText(rise, oil)}`,
  };
};

const besideText = (
  some: readonly Beside[],
  { controls, controlRise = 0 }: OilTest,
  assessment: TestAssessment,
) =>
  `Oil ${some[0]?.verb ?? ""} ${joined(some.map(({ by }) => by))}, ${controlsText(controls, assessment)} by ${signed(controlRise)}: net ${joined(some.map(({ net }) => net))}, ${some[0]?.says ?? ""}.`;

/** So many controls are counted and not listed. */
const manyControls = 4;

/** `the control 1`, `the other 27`. */
const controlsText = (controls: readonly string[], { cylinders, oil }: TestAssessment): string =>
  controls.length <= manyControls
    ? `the control ${joined(controls)}`
    : cylinders.length ===
        controls.length + (oil?.cylinders.filter(({ label }) => !controls.includes(label)).length ?? 0)
      ? `the other ${count(controls.length)}`
      : `the ${count(controls.length)} controls`;

const saysText = ({ withinScatter }: OilRise, evidence: OilEvidence, assessment: TestAssessment): string =>
  `${wordsOf(evidence, assessment)}${withinScatter === true ? ", which scatter alone may make" : ""}`;

const tailText = (rise: OilRise, oil: OilTest): string => {
  const { alone, doubts } = rise;
  const room =
    oil.controlRise !== undefined && alone !== undefined && alone >= large
      ? [`its room alone may raise a reading by ${percent(alone)}`]
      : [];
  const more = [...doubts.flatMap((doubt) => doubtWords[doubt]?.(rise) ?? []), ...room];
  return more.length === 0 ? "" : ` (${more.join("; ")})`;
};

const riseText = (rise: OilRise, oil: OilTest, assessment: TestAssessment): string => {
  const { label, evidence, net, doubts, alone } = rise;
  if (doubts.includes("too-much-oil"))
    return `Oil filled more than half of the chamber of ${label}: what it did there tells nothing of rings.`;
  if (doubts.includes("fell")) return fellText(rise, oil, assessment);
  if (evidence === undefined) return "";
  const says = saysText(rise, evidence, assessment);
  const moved = `Oil ${movedText(rise.rise, label)}`;
  const nobody =
    assessment.cylinders.length === 1
      ? "with no other cylinder to hold it against"
      : "with no sound cylinder oiled beside it";
  const tail = tailText(rise, oil);
  if (net === undefined) return `${moved}, ${nobody}: ${says}, for oil raises any reading${tail}.`;
  return `${moved}, ${nobody}; ${percent(alone ?? 0)} at most is the room it takes up, ${percent(net)}${rangeText(rise)} is left: ${says}${tail}.`;
};

/** Oil lowers no reading. */
const fellText = (
  { label, rise }: OilRise,
  { controlRise, controls }: OilTest,
  assessment: TestAssessment,
): string => {
  const beside =
    controlRise === undefined ? "" : `, ${controlsText(controls, assessment)} ${changed(controlRise)}`;
  return `With oil ${label} read ${changed(rise)}${beside}: oil lowers no reading, so a tired battery or the gauge did. It tells nothing of rings: make the dry and the oil readings again.`;
};
const changed = (rise: number): string =>
  percent(Math.abs(rise)) === "0 %"
    ? "the same"
    : `${percent(Math.abs(rise))} ${rise < 0 ? "lower" : "higher"}`;

/** Why no more than a weak sign. */
const doubtWords: Readonly<Partial<Record<OilDoubt, (rise: OilRise) => string>>> = {
  "much-oil": ({ share = 0 }) =>
    `the oil filled ${percent(share)} of the chamber, and no control shows what that did`,
  "unequal-oil": () => "the control had another amount of oil",
  "other-gauge": () => "dry and oiled were read by two gauges",
  "very-low": () => "of so low a reading a percentage says little",
  diesel: () => "in a diesel a little oil is much of the chamber",
};

/** The range of 19 in 20, in whole percent: ` (11 to 25 %)`. */
const rangeText = ({ netRange }: OilRise): string =>
  netRange === undefined ? "" : ` (${signed(netRange[0]).replace(" %", "")} to ${signed(netRange[1])})`;

const controlText = (
  { controls, controlsRoseToo, cylinders }: OilTest,
  { diagnosis }: TestAssessment,
): string => {
  if (controlsRoseToo !== true) return "";
  const most = Math.max(
    ...cylinders.flatMap(({ label, alone }) => (controls.includes(label) ? (alone ?? []) : [])),
  );
  const one = controls.length === 1;
  const which = controls.length <= manyControls ? joined(controls) : `the ${count(controls.length)} controls`;
  return `With oil ${which} rose by more than its room explains (${percent(most)} at most): ${one ? "it" : "they"} may be ${diagnosis?.causes[0]?.code === "washed-or-dry-bores" ? "dry" : "worn"} too.`;
};

/** Said where the rise is: no cause counts it, and what would have it count. */
const byTwoText = ({ byTwo, against }: OilTest, { record, test }: TestAssessment): string => {
  if (byTwo === undefined || against !== "control") return "";
  const { dry, wet } = byTwo;
  const named = (name: string | undefined): string =>
    name === undefined ? "a gauge not named" : clean(name);
  const said = `It counts for no cause: dry by ${named(dry)}, with oil by ${named(wet)}.`;
  if (dry !== undefined && wet !== undefined) return said;
  const row = ["--test", test.id, "--what", wet === undefined ? "wet" : "dry"];
  const gauge = ["--gauge", clean(dry ?? wet ?? ""), "--because", "one gauge"];
  return `${said} If it was one gauge: ${typedLine(["amend", record.engine.id, ...row, ...gauge])}`;
};

const signed = (rise: number): string => {
  const text = percent(Math.abs(rise));
  return rise < 0 && text !== "0 %" ? `-${text}` : text;
};
const verbOf = (rise: number): string => (rise < 0 ? "lowered" : "raised");
const movedText = (rise: number, label: string): string =>
  `${verbOf(rise)} ${label} by ${percent(Math.abs(rise))}`;
