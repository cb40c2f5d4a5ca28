// Which cylinder of an engine a text names.

import { withoutUnitAndKind } from "./heading-text.ts";
import { cylinderNamed, isSummary, plainText, sideNamed } from "./sheet-words.ts";

/** The label of an engine's cylinder that a text names: as it stands, else by its number, its side, or its first letters. */
export const labelIn = (text: string, labels: readonly string[]): string | undefined => {
  const plain = plainText(text);
  const asIs = labels.find((label) => plainText(label) === plain);
  if (asIs !== undefined) return asIs;
  const named = cylinderNamed(withoutUnitAndKind(text)) ?? sideNamed(withoutUnitAndKind(text));
  const found = labels.find((label) => label.toUpperCase() === named);
  if (found !== undefined || named !== undefined || isSummary(text)) return found;
  // a word goes with the label of letters that it begins with, where it is the only one
  const begun = labels.filter((label) => /^[A-Za-z]+$/.test(label) && plain.startsWith(label.toLowerCase()));
  return begun.length === 1 ? begun[0] : undefined;
};
