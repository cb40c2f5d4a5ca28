// The options of `decide`.

import { openings } from "@sealtrend/core/parts";
import type { Option } from "../../command.ts";

export const decideOptions: readonly Option[] = [
  {
    name: "opened",
    value: "STATE",
    choices: openings,
    help: "how far it is open",
    means: {
      "head-off": "the head",
      "bottom-open": "the pan and the caps",
      "pistons-in": "both, the pistons still in",
      "pistons-out": "both, the pistons out",
      "crank-out": "all of it",
    },
  },
  { name: "engine-out", help: "it is out of its place already" },
  {
    name: "own",
    value: "5y",
    help: "how long you will keep it (default as in engine.json)",
    words: ["for-good"],
    orElse: "years such as 11y or 1.5y",
  },
  {
    name: "renewed",
    value: "2004",
    help: "when its rings were last new, a year or a day (default engine.json)",
  },
  {
    name: "years-left",
    value: "12",
    help: "years you give its rings yet, where no trend tells (default engine.json)",
  },
  {
    name: "price",
    value: "NAME=N",
    takes: "list",
    example: "work.reRing=620",
    help: "prices in place of those in engine.json, such as work.reRing=620 jobs.headOff=350 test=15",
  },
  { name: "test", value: "ID", help: "which test to go by (default the newest that counts)" },
  { name: "rules", value: "FILE", help: "judge by the rules in this sheet" },
  { name: "faults", value: "DIR", help: "rank the causes by the fault tables in this folder" },
];
