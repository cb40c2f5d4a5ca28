// The leak-down in the detail behind `show`: each leak with its uncertainty, and what the figures rest on.

import type { CylinderAssessment, LeakValue, TestAssessment } from "@sealtrend/core";
import { fixed, percent } from "../words.ts";

/** Paragraphs, not wrapped. */
export const leakWhy = (assessment: TestAssessment): readonly string[] => [
  ...assessment.cylinders.flatMap(cylinderText),
  ...restsOn(assessment),
  ...crankingText(assessment),
];

const cylinderText = ({ label, leakDown }: CylinderAssessment): readonly string[] => {
  if (leakDown === undefined) return [];
  const { lost, uLost, sizing, master } = leakDown;
  const doubt = uLost === undefined ? "" : ` ± ${fixed(uLost * 100, 1)} points`;
  const share =
    master?.kind === "margin"
      ? `, ${fixed(master.margin, 2)} ± ${fixed(master.uMargin, 2)} of the master`
      : "";
  return [`${label}: ${percent(lost, 1)}${doubt} lost${sizeText(sizing)}${share}`];
};

const sizeText = ({ judgement, alphaSpan, byHoles }: LeakValue["sizing"]): string => {
  if (byHoles !== undefined) return holesText(byHoles);
  if (alphaSpan !== undefined)
    return `; supply not known: ${fixed(alphaSpan.low, 2)} to ${fixed(alphaSpan.high, 2)} times the restrictor over supplies of 30 to 100 psi`;
  if (judgement?.kind === "tight")
    return `, within what the dials leave open: at most ${fixed(judgement.limit.alpha, 2)} times the restrictor`;
  if (judgement?.kind !== "measured") return "";
  const { alpha, uAlpha, size } = judgement.figures;
  const hole =
    size === undefined
      ? ""
      : `, a hole of ${fixed(size.equalHole * 1e3, 2)} ± ${fixed(size.uEqualHole * 1e3, 2)} mm made like it, ${fixed(size.area * 1e6, 2)} ± ${fixed(size.uArea * 1e6, 2)} mm2`;
  return `, ${fixed(alpha, 3)} ± ${fixed(uAlpha, 3)} times the restrictor${hole}`;
};

const holesText = (byHoles: NonNullable<LeakValue["sizing"]["byHoles"]>): string => {
  switch (byHoles.kind) {
    case "measured":
      return `, a hole of ${fixed(byHoles.hole * 1e3, 2)} ± ${fixed(byHoles.uHole * 1e3, 2)} mm by the open holes the tester was read with`;
    case "outside":
      return "; outside what the open holes of known size span, so no hole is told";
    case "too-few":
      return "; two open holes of known size are needed to tell a hole";
    case "contradictory":
      return "; the open holes of known size contradict one another, so no hole is told";
  }
};

/** What the areas rest on: no figure in mm2 without its discharge coefficient. */
const dischargeText = ({ cylinders }: TestAssessment): string => {
  const sizes = cylinders.flatMap(({ leakDown }) => {
    const { judgement } = leakDown?.sizing ?? {};
    return judgement?.kind === "measured" ? (judgement.figures.size ?? []) : [];
  });
  const [first] = sizes;
  if (first === undefined) return "";
  const [least, most] = [Math.min, Math.max].map((pick) => fixed(pick(...sizes.map(({ cd }) => cd)), 2));
  const cd = least === most ? (least ?? "") : `${least ?? ""} to ${most ?? ""}`;
  return ` mm2 are effective areas, discharge coefficient times area, if that of the restrictor is ${cd} ± ${fixed(first.cdHalfWidth, 2)}.`;
};

const restsOn = (assessment: TestAssessment): readonly string[] => {
  const { leak } = assessment;
  const { instrument, warmthFactor, masterLost } = leak ?? {};
  if (instrument === undefined) return [];
  const master =
    masterLost === undefined ? "" : ` The master orifice lost ${percent(masterLost, 1)} that day.`;
  const warmth =
    warmthFactor === undefined
      ? ""
      : ` With the cylinder's air as warm as the engine every leak is ${fixed(warmthFactor, 3)} times that; it is left out, so that tests made the same way compare.`;
  const isComputed = assessment.cylinders.some(({ leakDown }) => {
    const { judgement, alphaSpan, byHoles } = leakDown?.sizing ?? {};
    return (
      judgement !== undefined ||
      alphaSpan !== undefined ||
      byHoles !== undefined ||
      leakDown?.master !== undefined
    );
  });
  if (!isComputed) return ["The percent of this tester as read: how large a leak is, it does not tell."];
  return [
    `Leaks by steady flow through restrictor and leak, cylinder as warm as the supply, air of ${fixed(instrument.ambient / 100, 0)} hPa.${dischargeText(assessment)}${master}${warmth}`,
  ];
};

const crankingText = ({ leak }: TestAssessment): readonly string[] => {
  const { cranking } = leak ?? {};
  if (cranking === undefined) return [];
  const speed = `${fixed(cranking.speed, 0)} rpm, ${cranking.speedFrom}`;
  const each = cranking.cylinders.map(
    ({ label, expected, uExpected, observed, z }) =>
      `${label} ${fixed(expected, 3)} ± ${fixed(uExpected, 3)} expected, ${fixed(observed, 3)} read (${fixed(z, 1)})`,
  );
  return [
    `Cranking over that of the others, by the leaks at ${speed} (a model of this project, computed): ${each.join("; ")}.`,
  ];
};
