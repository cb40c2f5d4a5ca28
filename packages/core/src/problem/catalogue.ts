// Every fault the core can name, by code. The sentences stand in words/, a file a subject.

import { csvWords } from "./words/csv.ts";
import { recordWords } from "./words/record.ts";
import { rulesWords } from "./words/rules.ts";

export const catalogue = { ...csvWords, ...recordWords, ...rulesWords } as const;
