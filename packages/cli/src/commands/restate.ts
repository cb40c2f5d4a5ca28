// restate: a leak-down reading as another tester would show it, or why that cannot be told.

import { answerLeak } from "@sealtrend/core";
import type { Command } from "../command.ts";
import { restateDocument } from "../documents/restate-document.ts";
import { saidOnce } from "../render/aside.ts";
import { restateScreen } from "../render/restate/restate.ts";
import { restateOptions } from "./restate-steps/restate-options.ts";
import { restateQuestion } from "./restate-steps/restate-question.ts";
import { namedTesters } from "./restate-steps/restate-testers.ts";

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
    const typed = restateQuestion(args, await namedTesters(args, io));
    const { unit, aside } = typed;
    const shown = { ...typed, answer: answerLeak(typed.question) };
    const detail = args.flag("why") ? "why" : "short";
    const lines = restateScreen(shown, { unit, width: io.width, detail });
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: restateDocument(shown, unit),
      ...(aside.length === 0 ? {} : { aside: saidOnce(aside) }),
    };
  },
};
