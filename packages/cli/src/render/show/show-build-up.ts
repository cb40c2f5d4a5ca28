// The first stroke beside the last, and what its share may point to. A rule of workshop manuals, weak, and said to be so.

import type { BuildUp, TestAssessment } from "@sealtrend/core/parts";
import { fixed, joined, percent } from "../words.ts";

/** Below this share of the final reading the strokes are called too few. */
const nearlyAll = 0.95;

/** A sentence a low cylinder, and one where the strokes were too few for this gauge. */
export const buildUpText = ({ buildUp, trust, record }: TestAssessment): string => {
  if (buildUp === undefined || trust.voids === "all") return "";
  const { cylinders, middle, reached } = buildUp;
  const valves = record.engine.porting === "valves";
  const told = cylinders.flatMap(({ label, share, pattern }) => {
    const shares = `${percent(share)} of the last, the middle cylinder ${percent(middle)}`;
    switch (pattern) {
      case "builds-up":
        return [`First stroke of ${label}: ${shares}; low first, then building is a weak sign of rings.`];
      case "stays-flat":
        return [
          `First stroke of ${label}: ${shares}; it hardly builds, ${valves ? "a weak sign of a valve" : "which does not speak for rings"}.`,
        ];
      default:
        return [];
    }
  });
  const odd = cylinders.flatMap(({ label, share, odd: how }) =>
    how === undefined
      ? []
      : [
          `First stroke of ${label}: ${percent(share)} of the last, the middle cylinder ${percent(middle)}, though it is not low: read its first stroke again${how === "late" ? "; if it stays so, a weak sign of rings" : ""}.`,
        ],
  );
  const alike = cylinders.flatMap(({ label, pattern }) => (pattern === "as-others" ? [label] : []));
  const one = alike.length === 1;
  return [
    ...told,
    ...odd,
    ...(alike.length === 0
      ? []
      : [
          `First stroke: ${joined(alike)} ${one ? "builds" : "build"} up as the others do, no sign of rings or${valves ? " valves" : " their absence"}.`,
        ]),
    ...(reached === undefined || reached.share >= nearlyAll
      ? []
      : [
          `By the first strokes, ${String(reached.strokes)} got this gauge to about ${percent(reached.share)} of where it stops: give it more, and the same number to each.`,
        ]),
  ].join(" ");
};

/** The numbers behind it, for `--why`. */
export const buildUpWhy = ({ buildUp }: TestAssessment): string[] =>
  buildUp === undefined ? [] : [`${sharesText(buildUp)}${reachedText(buildUp)}`];

const sharesText = ({ cylinders, middle, bounds }: BuildUp): string => {
  const doubt = Math.max(...cylinders.map(({ share, uncertainty }) => share * uncertainty));
  const shares = cylinders.map(({ label, share }) => `${label} ${fixed(share, 2)}`).join(", ");
  return `First stroke / last: ${shares} (± ${fixed(doubt, 2)}), the middle ${fixed(middle, 2)}. The gauge and its hose set the share, so only readings of one gauge compare. Below ${fixed(bounds.low, 2)} of the middle it is called building up, above ${fixed(bounds.high, 2)} staying flat (judgement); what that points to is a rule of makers' manuals (GM, Ford, Isuzu, Nissan), which a computed leak does not give.`;
};

const reachedText = ({ reached }: BuildUp): string =>
  reached === undefined
    ? ""
    : ` By that share ${String(reached.strokes)} strokes reach ${reached.share > 0.99 ? "practically all" : `about ${percent(reached.share)}`} of the final reading (computed: a gauge fills by an equal share of what is missing).`;
