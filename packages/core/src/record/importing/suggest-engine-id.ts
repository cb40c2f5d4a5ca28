// A name of a machine as the id of an engine: what the name of a folder may be on every system, and no spreadsheet
// takes for a date or a number.

import { plainText } from "./sheet-words.ts";

const rule = /^[a-z][a-z][a-z0-9_-]{0,38}$/;
const devices = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])$/;

/** Whether a text can be the id of an engine. */
export const isEngineId = (text: string): boolean => rule.test(text) && !devices.test(text);

/** The id for a machine's name: small letters, digits and hyphens. @param taken - ids that it may not be */
export const suggestEngineId = (name: string, taken: ReadonlySet<string> = new Set()): string => {
  const bare = plainText(name)
    .replace(/[^a-z0-9_]+/g, "-")
    .replace(/^[-_]+|[-_]+$/g, "")
    .slice(0, longest)
    .replace(/[-_]+$/, "");
  const base = isEngineId(bare) ? bare : `engine${bare === "" ? "" : `-${bare}`}`;
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${String(n)}`;
    if (!taken.has(id)) return id;
  }
};

/** Leaves room for `engine-` before and a number behind. */
const longest = 26;
