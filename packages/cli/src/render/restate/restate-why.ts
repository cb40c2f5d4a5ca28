// --why of `restate`: the numbers between the reading and the answer.

import type { LeakAnswer, LeakQuestion } from "@sealtrend/core";
import { held } from "./restate-words.ts";
import { kPa } from "../units.ts";
import { fixed } from "../words.ts";

interface Shown {
  readonly answer: LeakAnswer;
  readonly question: LeakQuestion;
}

const models = { isentropic: "isentropic flow", iso6358: "the form of ISO 6358" } as const;

/** Each line a fact; ± is one standard uncertainty. */
export const restateWhy = ({ answer, question }: Shown, width: number): readonly string[] => {
  const { figures, restated, alphaSpan } = answer;
  const lines = [
    ...(figures === undefined
      ? []
      : [
          `leak over restrictor (alpha) ${fixed(figures.alpha, 3)} ± ${fixed(figures.uAlpha, 3)}, by ${models[question.model?.name ?? "isentropic"]}`,
          `air as fast as sound in the restrictor: ${yesNo(figures.chokedRestrictor)}, in the leak: ${yesNo(figures.chokedLeak)}`,
        ]),
    ...(figures?.size === undefined
      ? []
      : [
          `effective area ${fixed(1e6 * figures.size.area, 3)} ± ${fixed(1e6 * figures.size.uArea, 3)} mm2, with a discharge coefficient of ${fixed(figures.size.cd, 2)} ± ${fixed(figures.size.cdHalfWidth, 2)} for the restrictor`,
        ]),
    ...(alphaSpan === undefined
      ? []
      : [`leak over restrictor ${fixed(alphaSpan.low, 2)} to ${fixed(alphaSpan.high, 2)}, at 30 to 100 psi`]),
    ...(restated === undefined
      ? []
      : [
          `on the other tester ${fixed(100 * restated.reading.lost, 2)} % by the law of a hole, ${fixed(100 * restated.laminarLost, 2)} % by that of a gap (flow as the difference of squared pressures), ± ${fixed(100 * restated.uLost, 2)}`,
          "restated only if the two differ by less than a factor 2 and less than 10 points, and the dials leave ln of the leak within 0.25 (judgement)",
        ]),
    `dials ± ${fixed(kPa(question.uDial), 1)} kPa each, air of the place ${fixed(kPa(question.ambient), 1)} kPa absolute; ± is one standard uncertainty`,
    "for the same cylinder in the same state: a cold reading never becomes a warm one, nor a dry one an oiled one",
  ];
  return lines.flatMap((line) => held(line, width, "  "));
};

const yesNo = (is: boolean): string => (is ? "yes" : "no");
