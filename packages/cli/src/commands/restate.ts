// restate: a leak-down reading as another tester would show it, or why that cannot be told.

import {
  type LeakAnswer,
  type LeakQuestion,
  type PressureUnit,
  answerLeak,
  writeQuantity,
} from "@sealtrend/core";
import type { Command } from "../command.ts";
import { restateDocument } from "../documents/restate-document.ts";
import { restateScreen } from "../render/restate/restate.ts";
import { pressureUnit } from "../render/units.ts";
import { restateOptions } from "./restate-steps/restate-options.ts";
import { restateQuestion } from "./restate-steps/restate-question.ts";
import { namedTesters } from "./restate-steps/restate-testers.ts";
import { usage } from "./usage.ts";

export const restate: Command = {
  name: "restate",
  summary: "a leak-down reading as another tester would show it",
  examples: [
    "sealtrend restate --read 60psi --regulated 80psi --restrictor 0.040in --to-restrictor 0.060in",
    "sealtrend restate --lost 18 --regulated 80psi --restrictor 1.0mm --to-regulated 6bar",
    "sealtrend restate --read 72psi --regulated 80psi --restrictor 0.040in --matched yes",
  ],
  positionals: [],
  options: restateOptions,
  run: async (args, io) => {
    const { question, unit, assumed } = restateQuestion(args, await namedTesters(args, io));
    const answer = answerLeak(question);
    stopOnDisagreement(answer, question, unit);
    const asked = args.text("units");
    const lines = restateScreen(
      { answer, question, assumed },
      {
        unit: asked === undefined ? unit : pressureUnit(asked, { demo: false }, unit),
        width: io.width,
        detail: args.flag("why") ? "why" : "short",
      },
    );
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: restateDocument(answer, question, assumed),
    };
  },
};

/** A cylinder above its supply by more than the dials explain is a slip of the line or a fault of the dials. @throws Stop 2 */
const stopOnDisagreement = (
  { judgement, reading }: LeakAnswer,
  { typed }: LeakQuestion,
  unit: PressureUnit,
): void => {
  if (judgement?.kind !== "disagree" || reading === undefined || typed.kind === "lost") return;
  throw usage(
    "dials-disagree",
    `the cylinder reads ${writeQuantity(reading.cylinder, unit, 1)}, above its supply of ${writeQuantity(reading.supply, unit, 1)}, by more than the dials explain`,
    `at most the supply, and ${writeQuantity(2 * judgement.uDrop, unit, 1)} more`,
    "see which dial is which; with the valve shut both must read the same",
  );
};
