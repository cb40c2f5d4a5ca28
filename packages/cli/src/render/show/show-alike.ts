// Low cylinders beside the one whose causes are told: what is likeliest in each of them.

import type { TestAssessment } from "@sealtrend/core";
import { causeIn, chanceText } from "./cause-words.ts";
import { joined } from "../words.ts";

interface OtherLow {
  readonly labels: readonly string[];
  /** What is likeliest in them, and how likely: in the one of them where it is most. */
  readonly code: string;
  readonly chance: number;
}

/** By what is likeliest in them; none that the leading cause is about too. */
export const othersLow = ({ diagnosis, cylinders, faults }: Known): readonly OtherLow[] => {
  const [leading] = diagnosis?.causes ?? [];
  if (diagnosis === undefined || leading === undefined) return [];
  const others = cylinders.flatMap(({ standing, label }, place) => {
    if (standing !== "lagging" && standing !== "suspect") return [];
    if (place === diagnosis.target || leading.cylinders.includes(place)) return [];
    const chances = diagnosis.cylinders[place] ?? [];
    const chance = Math.max(0, ...chances);
    return [{ label, chance, code: faults.causes[chances.indexOf(chance)]?.code ?? "" }];
  });
  return [...new Set(others.map(({ code }) => code))].map((code) => {
    const same = others.filter((one) => one.code === code);
    return {
      code,
      labels: same.map(({ label }) => label),
      chance: Math.max(...same.map(({ chance }) => chance)),
    };
  });
};

type Known = Pick<TestAssessment, "diagnosis" | "cylinders" | "faults">;

/** So many are told. */
const most = 2;

/** `In 2 likewise.`, or its own likeliest cause. */
export const alikeText = (assessment: TestAssessment): readonly string[] =>
  othersLow(assessment)
    .slice(0, most)
    .map(({ labels, code, chance }) =>
      code === assessment.diagnosis?.causes[0]?.code
        ? `In ${joined(labels)} likewise.`
        : `Beside it ${causeIn(code, joined(labels), assessment.faults)}: ${chanceText(chance)}.`,
    );
