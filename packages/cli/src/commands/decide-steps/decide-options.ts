// The options of `decide`.

import { openings } from "@sealtrend/core/parts";
import type { Option } from "../../command.ts";

export const decideOptions: readonly Option[] = [
  {
    name: "opened",
    value: "STATE",
    choices: openings,
    help: "how far it is open: the head; the pan and caps; both, pistons still in, out; all of it",
  },
  { name: "engine-out", help: "it is out of its place" },
  { name: "own", value: "5y", help: "how long you will keep it: 11y, 1.5y, for-good (default engine.json)" },
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
    help: "a price over that of engine.json, such as work.reRing=620 jobs.headOff=350 test=15",
  },
  { name: "test", value: "ID", help: "which test to go by (default the newest that counts)" },
  { name: "rules", value: "FILE", help: "hold it against the rules of this sheet" },
  { name: "faults", value: "DIR", help: "tell causes by the tables in this folder" },
];
