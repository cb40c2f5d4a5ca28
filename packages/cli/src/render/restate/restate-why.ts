// --why of `restate`: the numbers between the reading and the answer.

import { type PressureUnit, fromSi, usualSupplies } from "@sealtrend/core/parts";
import { fixed } from "../words.ts";
import type { RestateOptions, RestateShown } from "./restate-shown.ts";
import { held } from "./restate-words.ts";

const models = { isentropic: "isentropic flow", iso6358: "the form of ISO 6358" } as const;

/** Each line a fact; ± is one standard uncertainty. */
export const restateWhy = (shown: RestateShown, { width, unit }: RestateOptions): readonly string[] => {
  const { answer, question } = shown;
  const { restated, alphaSpan, unchanged } = answer;
  const lines = [
    ...leakOverRestrictor(shown),
    ...(alphaSpan === undefined
      ? []
      : [
          `leak over restrictor ${fixed(alphaSpan.low, 2)} to ${fixed(alphaSpan.high, 2)}, at ${supplySpan(unit)}`,
        ]),
    ...(restated === undefined || unchanged !== undefined
      ? []
      : [
          `on the other tester ${fixed(100 * restated.reading.lost, 2)} % by the law of a hole, ${fixed(100 * restated.laminarLost, 2)} % by that of a gap (flow as the difference of squared pressures)${answer.judgement?.kind === "tight" ? "" : `, ± ${fixed(100 * restated.uLost, 2)}`}`,
          "restated only if the two differ by less than a factor 2 and less than 10 points, and the dials leave ln of the leak within 0.25 (judgement)",
        ]),
    `each dial ± ${digits(question.uDial, unit, 3)} ${unit}, air of the place ${digits(question.ambient, unit, 4)} ${unit} absolute`,
    "for the same cylinder in the same state: a cold reading never becomes a warm one, nor a dry one an oiled one",
  ];
  return lines.flatMap((line) => held(line, width, "  "));
};

/** `30 to 100 psi`, in the unit of the answer. */
export const supplySpan = (unit: PressureUnit): string =>
  `${digits(usualSupplies.low, unit, 2)} to ${digits(usualSupplies.high, unit, 2)} ${unit}`;

const digits = (pascals: number, unit: PressureUnit, count: number): string =>
  String(Number(fromSi(pascals, unit).toPrecision(count)));

/** Below what the dials can show there is a limit, and no doubt to either side. */
const leakOverRestrictor = ({
  answer: { figures, judgement },
  question,
}: RestateShown): readonly string[] => {
  const law = models[question.model?.name ?? "isentropic"];
  if (judgement?.kind === "tight" && figures !== undefined)
    return [
      `leak over restrictor (alpha) ${fixed(figures.alpha, 3)}, at most ${fixed(judgement.limit.alpha, 3)}, by ${law}`,
    ];
  if (judgement?.kind !== "measured" || figures === undefined) return [];
  const { alpha, uAlpha, chokedRestrictor, chokedLeak, size } = figures;
  return [
    `leak over restrictor (alpha) ${fixed(alpha, 3)} ± ${fixed(uAlpha, 3)}, by ${law}`,
    `air as fast as sound in the restrictor: ${yesNo(chokedRestrictor)}, in the leak: ${yesNo(chokedLeak)}`,
    ...(size === undefined
      ? []
      : [
          `effective area ${fixed(1e6 * size.area, 3)} ± ${fixed(1e6 * size.uArea, 3)} mm2, with a discharge coefficient of ${fixed(size.cd, 2)} ± ${fixed(size.cdHalfWidth, 2)} for the restrictor`,
        ]),
  ];
};

const yesNo = (is: boolean): string => (is ? "yes" : "no");
