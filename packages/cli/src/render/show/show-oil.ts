// What oil did to the readings, and what of it may point at the rings.

import {
  type OilDoubt,
  type OilEvidence,
  type OilRise,
  type OilTest,
  type TestAssessment,
  writeQuantity,
} from "@sealtrend/core";
import { joined, percent } from "../words.ts";

const oilWords: Readonly<Record<OilEvidence, string>> = {
  strong: "rings or bore much more likely than valves",
  rings: "rings or bore more likely than valves",
  weak: "a weak sign of rings",
  none: "no sign of rings; a valve, the gasket or a broken ring would show so",
};

/** From here on what the oil's own room adds is said beside a control too; judgement. */
const large = 0.15;

/** `Oil raised 3 by 20 %, the control 1 by 2 %: net 18 % (11 to 25 %), rings or bore more likely than valves.` A sentence
 *  a low cylinder. */
export const oilText = (assessment: TestAssessment): string => {
  const { oil, trust } = assessment;
  if (oil === undefined || trust.voids === "all") return "";
  return [...oil.cylinders.map((rise) => riseText(rise, oil, assessment)), controlText(oil)]
    .filter((text) => text !== "")
    .join(" ");
};

const riseText = (rise: OilRise, oil: OilTest, { cylinders }: TestAssessment): string => {
  const { label, evidence, net, doubts, alone, withinScatter } = rise;
  if (doubts.includes("too-much-oil"))
    return `Oil filled more than half of the chamber of ${label}: what it did there tells nothing of rings.`;
  if (doubts.includes("fell")) return fellText(rise, oil);
  if (evidence === undefined) return "";
  const scatter = withinScatter === true ? ", which scatter alone may make" : "";
  const says = `${oilWords[evidence]}${scatter}`;
  const moved = `Oil ${movedText(rise.rise, label)}`;
  const nobody =
    cylinders.length === 1
      ? "with no other cylinder to hold it against"
      : "with no sound cylinder oiled beside it";
  const room =
    oil.controlRise !== undefined && alone !== undefined && alone >= large
      ? [`its room alone may raise a reading by ${percent(alone)}`]
      : [];
  const more = [...doubts.flatMap((doubt) => doubtWords[doubt]?.(rise) ?? []), ...room];
  const tail = more.length === 0 ? "" : ` (${more.join("; ")})`;
  if (net === undefined) return `${moved}, ${nobody}: ${says}, for oil raises any reading${tail}.`;
  if (oil.controlRise === undefined)
    return `${moved}, ${nobody}; ${percent(alone ?? 0)} at most is the room it takes up, ${percent(net)}${rangeText(rise)} is left: ${says}${tail}.`;
  return `${moved}, the control ${joined(oil.controls)} by ${signed(oil.controlRise)}: net ${signed(net)}${rangeText(rise)}, ${says}${tail}.`;
};

/** Oil lowers no reading. */
const fellText = ({ label, rise }: OilRise, { controlRise, controls }: OilTest): string => {
  const beside = controlRise === undefined ? "" : `, the control ${joined(controls)} ${changed(controlRise)}`;
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

const controlText = ({ controls, controlsRoseToo, cylinders }: OilTest): string => {
  if (controlsRoseToo !== true) return "";
  const most = Math.max(
    ...cylinders.flatMap(({ label, alone }) => (controls.includes(label) ? (alone ?? []) : [])),
  );
  const one = controls.length === 1;
  return `With oil ${joined(controls)} rose by more than its room explains (${percent(most)} at most): ${one ? "it" : "they"} may be worn too.`;
};

const signed = (rise: number): string => {
  const text = percent(Math.abs(rise));
  return rise < 0 && text !== "0 %" ? `-${text}` : text;
};
const movedText = (rise: number, label: string): string =>
  `${rise < 0 ? "lowered" : "raised"} ${label} by ${percent(Math.abs(rise))}`;

/** The numbers behind it, for `--why`. */
export const oilWhy = ({ oil }: TestAssessment): string[] => {
  if (oil === undefined) return [];
  const nets = oil.cylinders.flatMap(({ label, net, netUncertainty = 0 }) =>
    net === undefined ? [] : [`${label}: ${percent(net, 1)} ± ${percent(netUncertainty, 1)}`],
  );
  const less =
    oil.against === "oil-volume" ? "less what the room of the oil explains" : "less that of the control";
  const rooms = roomTexts(oil);
  return [
    ...(nets.length === 0
      ? []
      : [
          `Rise with oil, ${less}, of ${nets.join(", ")}. From 5 % on we call it a weak sign of rings, from 10 % a sign, from 25 % a strong one: judgement, for published thresholds differ (10 psi; 10 %; 20 to 25 %).`,
        ]),
    ...(rooms.length === 0
      ? []
      : [
          `${rooms.join("; ")} (computed from bore, stroke and compression ratio; the most, for oil that runs away takes no room).`,
        ]),
  ];
};

/** `5 ml in 1 and 3 fill 4 % of the chamber, which alone raises a sound cylinder by 5 %`, a part for each amount. */
const roomTexts = ({ cylinders }: OilTest): string[] => {
  const known = cylinders.flatMap(({ label, oil, share, alone }) =>
    oil === undefined || share === undefined ? [] : [{ label, share, alone, oil: writeQuantity(oil, "ml") }],
  );
  return [...new Set(known.map(({ oil }) => oil))].flatMap((amount) => {
    const same = known.filter(({ oil }) => oil === amount);
    const [first] = same;
    if (first === undefined) return [];
    const raises =
      first.alone === undefined ? "" : `, which alone raises a sound cylinder by ${percent(first.alone)}`;
    const where = joined(same.map(({ label }) => label));
    return [`${amount} in ${where} fill ${percent(first.share)} of the chamber${raises}`];
  });
};
