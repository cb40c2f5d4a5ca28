// The one way to make HTML here: a tag for templates. What stands in the template is ours; what is put into it is
// somebody's text, and is shown as text, with every character that hides or steers written out.

import { clean } from "../clean.ts";

/** HTML that the tag has made. Only this file can make it. */
class Markup {
  readonly #text: string;
  constructor(text: string) {
    this.#text = text;
  }
  toString(): string {
    return this.#text;
  }
}
export type { Markup };

type Part = string | Markup | readonly Markup[];

const signs: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

const escaped = (text: string): string =>
  clean(text, Infinity).replace(/[&<>"']/g, (sign) => signs[sign] ?? sign);

const partText = (part: Part): string => {
  if (typeof part === "string") return escaped(part);
  return part instanceof Markup ? String(part) : part.map(String).join("");
};

/** The line breaks and indents of our own source say nothing to a reader: they are left out, and between words and
 *  attributes one space is kept. */
const packed = (text: string): string =>
  text.replace(/\s*\n\s*/g, (gap, at: number) => {
    const [before = ">", after = "<"] = [text[at - 1], text[at + gap.length]];
    return before === ">" || after === "<" || after === ">" || after === "/" ? "" : " ";
  });

/** A template whose parts are escaped, in elements and in quoted attributes alike; parts that this tag made stay what
 *  they are. Never put a part into a style, a script, a URL or an unquoted attribute. */
export const html = (template: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  new Markup(template.map((text, i) => packed(text) + partText(parts[i] ?? "")).join(""));

/** Nothing. */
export const none: Markup = html``;

/** The same tag, for sheets of styles: a formatter that knows `html` would write a line for every word of them. */
export const sheet = (template: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  html(template, ...parts);
