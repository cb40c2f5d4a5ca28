// The bytes of a page: HTML or text.

import { pageHtml } from "./page-html.ts";
import type { Page } from "./page-model.ts";
import { pageText } from "./page-text.ts";
import { shownOn } from "../ascii.ts";

/** Where only ASCII is wanted HTML keeps every letter, as a number; text gets the plain twin of each. */
export const pageFile = (page: Page, form: "html" | "text", letters: "unicode" | "ascii"): string => {
  if (form === "text") return shownOn({ unicode: letters === "unicode" }, pageText(page));
  const text = pageHtml(page);
  return letters === "unicode"
    ? text
    : text.replace(/[^\n\x20-\x7e]/gu, (letter) => `&#${String(letter.codePointAt(0) ?? 0)};`);
};
