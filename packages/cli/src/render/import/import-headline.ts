// The first sentence of `import`: what it did, or would do.

import { type ImportResult, keptOutCount, slipsOf } from "../../commands/import-steps/import-result.ts";
import { readingsIn } from "../../commands/import-steps/readings-in.ts";
import { several, spanText } from "./import-words.ts";

/** `214 readings of 40 engines, 1998 to 2026; 7 readings left out at 3 places`. */
export const addedText = (result: ImportResult): string => {
  const tests = result.plans.flatMap(({ placed }) => placed.added);
  const engines = result.plans.filter(({ placed }) => placed.added.length > 0);
  const whose =
    engines.length === 1 ? `of ${engines[0]?.id ?? ""}` : `of ${several(engines.length, "engine")}`;
  const out = leftOutText(result);
  return `${several(readingsIn(tests), "reading")} ${whose}, ${spanText(tests)}${out === "" ? "" : `; ${out}`}`;
};

/** `7 readings left out at 3 places`; "" where nothing is. */
const leftOutText = (result: ImportResult): string => {
  const { readings, places } = keptOutCount(result);
  if (places === 0) return "";
  return readings === 0
    ? `${several(places, "place")} left out`
    : `${several(readings, "reading")} left out at ${several(places, "place")}`;
};

export const headline = (result: ImportResult): string => {
  switch (result.state) {
    case "open":
      return `${several(result.open.length, "question")} ${result.open.length === 1 ? "is" : "are"} open before anything of ${result.file} can be added.`;
    case "would add":
      return `Would add ${addedText(result)}. Nothing is written yet.`;
    case "added":
      return addedText(result);
    case "nothing new":
      return nothingNew(result);
  }
};

const nothingNew = (result: ImportResult): string => {
  const recorded = result.plans.flatMap(({ placed }) => placed.recorded);
  const out = leftOutText(result);
  if (recorded.length === 0)
    return `Nothing in ${result.file} can be added${out === "" ? ": it holds no reading" : `: ${out}`}.`;
  const readings = several(readingsIn(recorded), "reading");
  const told = slipsOf(result).length;
  const save = told === 0 ? "" : `; at ${several(told, "place")} the sheet says more, or otherwise`;
  return out === ""
    ? `Everything in ${result.file} is recorded already: ${readings}, ${spanText(recorded)}${save}. Nothing was added.`
    : `Nothing new in ${result.file}: ${readings} are recorded already, ${out}.`;
};
