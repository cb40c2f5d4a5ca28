// The words of a part on a page: what was seen that spoils it, then where its figures stand, the worst first.

import type { ItemStanding, Spoilt, TeardownItem } from "@sealtrend/core/parts";
import type { PageCell } from "./page-model.ts";
import { figureName } from "../teardown/teardown-words.ts";

/** The worst first. */
const words: Readonly<Record<ItemStanding, string>> = {
  outside: "outside",
  "too-close": "too close to tell",
  waits: "does not fit",
  worn: "worn, serviceable",
  "close-as-new": "inside wear, too close to call as new",
  "inside-wear": "inside wear",
  inside: "inside new",
};
const standings = Object.keys(words);

/** The worse of each name. */
const worstOf = (items: readonly TeardownItem[]): ItemStanding | undefined =>
  items
    .flatMap(({ standing }) => standing ?? [])
    .reduce<ItemStanding | undefined>(
      (so, one) => (so === undefined || standings.indexOf(one) < standings.indexOf(so) ? one : so),
      undefined,
    );

/** `outside: wear; rest inside wear`. @param spoilt - of this very part: whatever its sizes, it is not serviceable */
export const verdictText = (items: readonly TeardownItem[], spoilt: readonly Spoilt[] = []): string => {
  const names = [...new Set(items.map(figureName))];
  const told = names.flatMap((name) => {
    const standing = worstOf(items.filter((item) => figureName(item) === name));
    return standing === undefined ? [] : [{ name, standing }];
  });
  const groups = standings.flatMap((standing) => {
    const own = told.filter((one) => one.standing === standing);
    return own.length === 0 ? [] : [{ standing, own: own.map(({ name }) => name) }];
  });
  const last = groups.length - 1;
  const said = groups.map(({ standing, own }, i) => {
    const word = wordOf(standing, items, spoilt);
    if (groups.length === 1) return word;
    return i === last && standing.startsWith("inside") ? `rest ${word}` : `${word}: ${own.join(", ")}`;
  });
  return [...spoilt.map(({ text }) => text.replace(/^.*?: /, "")), ...said].join("; ");
};

const wordOf = (standing: string, items: readonly TeardownItem[], spoilt: readonly Spoilt[]): string => {
  if (standing === "worn" && spoilt.length > 0) return "worn";
  const isLimit = standing === "waits" && items.some(({ waitsFor }) => waitsFor === "limit");
  return isLimit
    ? "waits for the limit"
    : (Object.entries(words).find(([one]) => one === standing)?.[1] ?? "");
};

export const verdictCell = (text: string): PageCell => ({
  text,
  role: /^(inside (?:new|wear)|)$/.test(text) ? "plain" : "strong",
});
