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

/** Ends that a browser puts in by itself, wherever the next element or the end of the one around it tells. */
const impliedEnds = /<\/(?:td|th|tr|thead|tbody|li|dt|dd)>/g;
/** Quotes around a plain word; a part never stands in one of these, since its quotes lie in two pieces of the template. */
const plainQuotes = /="([\w-]+)"(?=[ >]|$)/g;

/** Of our own source what says nothing to a reader is left out, so that a long record stays small: line breaks, indents,
 *  ends of cells, quotes around one word. Between words and attributes one space is kept. */
const packed = (text: string): string =>
  text
    .replace(/\s*\n\s*/g, (gap, at: number) => {
      // before it stands a part, perhaps an attribute, behind it perhaps an element
      const [before = "", after = "<"] = [text[at - 1], text[at + gap.length]];
      return before === ">" || after === "<" || after === ">" || after === "/" ? "" : " ";
    })
    .replace(impliedEnds, "")
    .replace(plainQuotes, "=$1");

const packedOnce = new WeakMap<TemplateStringsArray, readonly string[]>();

/** A template is packed once, however many cells it makes. */
const packedParts = (template: TemplateStringsArray): readonly string[] => {
  const known = packedOnce.get(template);
  if (known !== undefined) return known;
  const parts = template.map(packed);
  packedOnce.set(template, parts);
  return parts;
};

/** A template whose parts are escaped, in elements and in quoted attributes alike; parts that this tag made stay what
 *  they are. Never put a part into a style, a script, a URL or an unquoted attribute. */
export const html = (template: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  new Markup(
    packedParts(template)
      .map((text, i) => text + partText(parts[i] ?? ""))
      .join(""),
  );

/** Nothing. */
export const none: Markup = html``;

/** The same tag, for sheets of styles: a formatter that knows `html` would write a line for every word of them. */
export const sheet = (template: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  html(template, ...parts);
