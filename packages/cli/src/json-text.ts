// A JSON document as text that steers no terminal.

import { steering } from "./render/clean.ts";

const ascii = /^[\n\x20-\x7e]*$/;

/** Indented, newline at the end. Characters that hide or steer are written `\u….`: the value stays what it was. */
export const jsonText = (value: unknown): string => steersNothing(`${JSON.stringify(value, undefined, 2)}\n`);

/** The same in one line, as JSON Lines has it. */
export const jsonLine = (value: unknown): string => steersNothing(`${JSON.stringify(value)}\n`);

const steersNothing = (text: string): string =>
  ascii.test(text) ? text : text.replace(new RegExp(`(?!\\n)${steering().source}`, "gu"), inUnits);

const inUnits = (character: string): string =>
  character.replace(/[^]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);
