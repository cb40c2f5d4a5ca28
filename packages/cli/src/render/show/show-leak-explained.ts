// Whether the leak of a cylinder explains its low cranking reading, in words.

import type { ExplainedCylinder, TestAssessment } from "@sealtrend/core/parts";
import { percent } from "../words.ts";

/** A sentence for each cylinder that stands apart in one of the two tests. */
export const explainedText = ({ leak, test, cylinders }: TestAssessment): readonly string[] => {
  const { cranking } = leak ?? {};
  if (cranking === undefined) return [];
  const other = [cranking.crankingTest, cranking.leakTest].find((id) => id !== test.id);
  const from = other === undefined ? "" : ` (with ${other})`;
  return cranking.cylinders.flatMap((one) => {
    const leaking = cylinders.find(({ label }) => label === one.label)?.leakDown?.standing;
    const isPart = one.kind === "does-not-explain" && (leaking === "lagging" || leaking === "suspect");
    const says = isPart ? partText : explanations[one.kind];
    return says === undefined || one.observed > 1 ? [] : [`${says(one, from)}.`];
  });
};

const compared = ({ expected, observed }: ExplainedCylinder, from: string): string =>
  `it would bring it to ${percent(expected)} of the others, and it reads ${percent(observed)}${from}`;

const look = "look at valve lift, timing, intake, chamber volume and hose";

/** A leak that stands out, and more beside it. */
const partText = (one: ExplainedCylinder, from: string): string =>
  `The leak of ${one.label} explains only part of its low cranking reading: ${compared(one, from)}; see to lash, lift and timing`;

const explanations: Partial<
  Record<ExplainedCylinder["kind"], (one: ExplainedCylinder, from: string) => string>
> = {
  explains: (one, from) =>
    `The leak of ${one.label} explains its low cranking reading: ${compared(one, from)}`,
  "does-not-explain": (one, from) =>
    one.expected >= 0.995
      ? `${one.label} leaks no more than the others, yet its cranking reads ${percent(one.observed)} of theirs${from}: ${look}`
      : `The leak of ${one.label} does not explain its low cranking reading: ${compared(one, from)}; ${look}`,
  worse: (one, from) =>
    `The leak of ${one.label} is larger than its cranking reading shows: ${compared(one, from)}; repeat the leak-down warm, at top dead centre`,
  "perhaps-part": (one, from) =>
    `The leak of ${one.label} may be part of its low cranking reading, it cannot be told: ${compared(one, from)}`,
};
