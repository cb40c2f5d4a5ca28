// Which one of its kind was measured: a cylinder, a journal, a valve, a head.

import type { MeasuredLabel } from "./measured-parts.ts";

/** The label in its own spelling; undefined where it names nothing of this engine. Journals are not held against a count: more
 *  than the crank has is told when the whole is judged.
 *  @param cylinders - the labels of the engine */
export const readLabel = (
  kind: MeasuredLabel,
  text: string,
  cylinders: readonly string[],
): string | undefined => {
  const typed = text.trim();
  switch (kind) {
    case "none":
      return typed === "" ? "" : undefined;
    case "cylinder":
      return cylinderNamed(typed, cylinders);
    case "journal":
      return numbered(typed);
    case "rod":
      return cylinderNamed(typed, cylinders) ?? numbered(typed);
    case "valve":
      return valveNamed(typed, cylinders);
    case "face":
    case "casting":
      return typed.length <= 24 ? typed.toLowerCase() : undefined;
  }
};

const cylinderNamed = (text: string, cylinders: readonly string[]): string | undefined =>
  cylinders.find((label) => label === text) ??
  cylinders.find((label) => label.toLowerCase() === text.toLowerCase());

const numbered = (text: string): string | undefined => (/^[1-9]\d?$/.test(text) ? text : undefined);

/** `3in`, `3ex`, and `3in2` where a cylinder has more than one. */
const valveNamed = (text: string, cylinders: readonly string[]): string | undefined => {
  const [, cylinder = "", which = "", number = ""] = /^(.+?)\s*(in|ex)([1-4]?)$/i.exec(text) ?? [];
  const named = cylinderNamed(cylinder, cylinders);
  return named === undefined ? undefined : `${named}${which.toLowerCase()}${number}`;
};

/** What a label may be, in words. */
export const labelsExpected = (kind: MeasuredLabel, cylinders: readonly string[]): string => {
  const first = cylinders[0] ?? "1";
  switch (kind) {
    case "none":
      return "no label: there is only one";
    case "cylinder":
      return `one of the cylinders ${cylinders.join(", ")}`;
    case "journal":
      return "the number of the journal, from 1 at the end that engine.json counts from";
    case "rod":
      return `one of the cylinders ${cylinders.join(", ")}, or the number of the pin`;
    case "valve":
      return `a cylinder and its valve, such as ${first}in or ${first}ex`;
    case "face":
      return "nothing, or which one in up to 24 signs, such as left";
    case "casting":
      return "what is cracked in up to 24 signs, such as head or block";
  }
};

/** What to write instead of a label that names nothing. @param text - what was written */
export const labelMend = (kind: MeasuredLabel, cylinders: readonly string[], text = ""): string => {
  const first = cylinderNamed(text.trim(), cylinders) ?? cylinders[0] ?? "1";
  if (kind === "none") return "leave the label empty";
  if (kind === "valve")
    return `write ${first}in for the intake valve of cylinder ${first}, ${first}ex for its exhaust valve`;
  if (kind === "face" || kind === "casting") return "write a short name, the rest in the note";
  return kind === "journal" ? "write 1, 2, 3 …" : `write ${first}, or the one that is meant`;
};
