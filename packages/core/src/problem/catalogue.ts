// Every fault the core can name, by code. The sentences stand in words/, a file a subject.

import { csvWords } from "./words/csv.ts";
import { faultTableWords } from "./words/fault-tables.ts";
import { gaugeWords } from "./words/gauges.ts";
import { importWords } from "./words/importing.ts";
import { jsonWords } from "./words/json.ts";
import { measurementWords } from "./words/measurements.ts";
import { numberWords } from "./words/number.ts";
import { recordWords } from "./words/record.ts";
import { rulesWords } from "./words/rules.ts";
import { typedLineWords } from "./words/typed-lines.ts";

/** From a code to the sentences it prints, given the facts they need. */
export const catalogue = {
  ...csvWords,
  ...numberWords,
  ...measurementWords,
  ...typedLineWords,
  ...jsonWords,
  ...recordWords,
  ...gaugeWords,
  ...rulesWords,
  ...faultTableWords,
  ...importWords,
} as const;

/** The code of every fault that data can have. */
export const problemCodes = Object.keys(catalogue) as readonly (keyof typeof catalogue)[];
