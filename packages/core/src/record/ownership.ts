// `ownership` and `renewed` of engine.json as a person types them.

import type { OwnedFor } from "./price-types.ts";
import { isIsoDate } from "./row-view.ts";

/** `5y`, `5 years`, `7.5y` or `for-good` with or without its hyphen; 1 month to 100 years. */
export const ownedForOf = (typed: string): OwnedFor | undefined => {
  const text = typed.trim().toLowerCase();
  if (/^for[\s-]?good$/.test(text)) return { kind: "for-good" };
  const [, number = ""] = /^(\d+(?:[.,]\d+)?)\s*(?:y|yr|yrs|year|years)$/.exec(text) ?? [];
  const years = Number(number.replace(",", "."));
  return number !== "" && years >= 1 / 12 && years <= 100 ? { kind: "years", years } : undefined;
};

/** The same as it stands in the file. */
export const ownedForText = (owned: OwnedFor): string =>
  owned.kind === "for-good" ? "for-good" : `${String(owned.years)}y`;

/** `2004` or `2004-05-01`, as text; undefined where it is neither. */
export const renewedOf = (typed: string): string | undefined => {
  const text = typed.trim();
  const isYear = /^(?:18|19|20)\d\d$/.test(text);
  return isYear || isIsoDate(text) ? text : undefined;
};
