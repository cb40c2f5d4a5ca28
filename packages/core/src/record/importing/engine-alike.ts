// Engines whose name is another one's but for its blanks, hyphens and capitals, or for one letter: they may be one, and only their
// owner knows.

import { plainText } from "./sheet-words.ts";

interface Named {
  readonly id: string;
  readonly name?: string | undefined;
}

/** The engine that a name is but for blanks, hyphens and capitals. */
export const engineSpelled = <T extends Named>(text: string, engines: readonly T[]): T | undefined => {
  const own = bareName(text);
  return engines.find(({ id, name = id }) => [id, name].some((known) => bareName(known) === own));
};

/** The engine that a name is but for one letter: a number is never a slip for another, nor `b` for `a`. */
export const engineOneLetterAway = <T extends Named>(text: string, engines: readonly T[]): T | undefined =>
  engines.find(({ id, name = id }) => [id, name].some((known) => isOneLetterAway(text, known)));

/** A name without what its spellings differ by. */
export const bareName = (text: string): string => plainText(text).replace(/[\s_-]+/g, "");

const isOneLetterAway = (a: string, b: string): boolean => {
  const [one, other] = [bareName(a), bareName(b)];
  const longest = Math.max(one.length, other.length);
  if (Math.min(one.length, other.length) < fewestLetters) return false;
  if (apartFrom(a) !== apartFrom(b)) return false;
  let start = 0;
  while (start < longest && one[start] === other[start]) start++;
  let end = 0;
  while (end < longest - start && one.at(-1 - end) === other.at(-1 - end)) end++;
  return longest - start - end <= 1;
};

/** Judgement: of a shorter name one letter is too much of it. */
const fewestLetters = 4;

/** What tells engines of one name apart: their numbers, and words of a letter or two. */
const apartFrom = (text: string): string => {
  const numbers = text.replace(/\D/g, "");
  const words = plainText(text)
    .split(/[^a-z]+/)
    .filter((word) => word.length === 1 || word.length === 2);
  return [numbers, ...words].join(" ");
};
