// Sentences for faults in engine.json and logbook.json.

import { nearest } from "../nearest.ts";
import { listed, quoted } from "./print.ts";

export const jsonWords = {
  "json-bad": ({ reason, mend }: { reason: string; mend: string }) => ({
    found: `this is not JSON: ${reason}`,
    expected: "names and text in double quotes, a comma between entries and none after the last",
    mend,
  }),
  "field-missing": ({ field, example }: { field: string; example: string }) => ({
    found: `there is no ${quoted(field)}`,
    expected: `${quoted(field)} among the entries`,
    mend: `add "${field}": ${example}`,
  }),
  "field-bad": (facts: {
    readonly field: string;
    readonly text: string;
    readonly expected: string;
    readonly mend?: string;
  }) => ({
    found: `${facts.field} is ${facts.text.length > 80 ? `${facts.text.slice(0, 80)} …` : facts.text}`,
    expected: facts.expected,
    mend: facts.mend ?? `write ${facts.expected}`,
  }),
  "field-unknown": ({ field, fields }: { field: string; fields: readonly string[] }) => {
    const [near] = nearest(field.slice(field.lastIndexOf(".") + 1), fields);
    return {
      found: `nothing here is named ${quoted(field)}; it is kept but not used`,
      expected: near === undefined ? `one of: ${listed(fields)}` : quoted(near),
      mend: near === undefined ? "rename it, or leave it" : `rename it ${near}`,
    };
  },
} as const;
