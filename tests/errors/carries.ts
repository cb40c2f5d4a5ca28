// Whether the change from what was typed to what passes stands in the mends that were printed, word for word.

/** @param typed - the words as typed  @param mended - the words that pass */
export const carriesLine = (
  mends: readonly string[],
  typed: readonly string[],
  mended: readonly string[],
): boolean => {
  if (stands(mends, mended.join(" "))) return true;
  if (mends.some((mend) => mend.startsWith("--") && stands([mended.join(" ")], mend))) return true;
  const { removed, added } = difference(typed, mended);
  return added.length > 0 ? stands(mends, added.join(" ")) : saysToLeaveOut(mends, removed);
};

/** Whether a text stands in one of the mends, not as a part of a longer word. */
export const stands = (mends: readonly string[], text: string): boolean =>
  text !== "" &&
  mends.some((mend) => {
    for (let at = mend.indexOf(text); at !== -1; at = mend.indexOf(text, at + 1)) {
      const [before = " ", after = " "] = [mend[at - 1], mend[at + text.length]];
      if (!(isPart(before) && isPart(text[0] ?? "")) && !(isPart(after) && isPart(text.at(-1) ?? "")))
        return true;
    }
    return false;
  });

const isPart = (sign: string): boolean => /[\p{L}\p{N}_-]/u.test(sign);

const leavingOut = /\b(?:leave|take|do without|keep one|remove|delete|without|empty|alone)\b/;

const saysToLeaveOut = (mends: readonly string[], removed: readonly string[]): boolean =>
  mends.some(
    (mend) =>
      leavingOut.test(mend) &&
      (removed.every((word) => !word.startsWith("--")) ||
        removed.some((word) => word.startsWith("--") && stands([mend], word.replace(/=.*/, "")))),
  );

/** What stands between the beginning and the end that both have. */
const difference = <T>(
  old: readonly T[],
  now: readonly T[],
): { readonly removed: readonly T[]; readonly added: readonly T[]; readonly at: number } => {
  let from = 0;
  while (from < Math.min(old.length, now.length) && old[from] === now[from]) from += 1;
  let end = 0;
  while (end < Math.min(old.length, now.length) - from && old.at(-1 - end) === now.at(-1 - end)) end += 1;
  return { removed: old.slice(from, old.length - end), added: now.slice(from, now.length - end), at: from };
};

/** A fault as far as it tells what to write: for one line, from 1, or for the whole file. */
export interface LineMend {
  readonly mend: string;
  readonly expected?: string;
  readonly line?: number;
}

/** What is new in a file and does not follow from the mends of its line: `line: the new part`. */
export const uncarried = (mends: readonly LineMend[], old: string, now: string): readonly string[] => {
  const [before, after] = [old.split("\n"), now.split("\n")];
  if (before.length !== after.length) return uncarriedLines(mends, before, after);
  return after.flatMap((line, i) => {
    const was = before[i] ?? "";
    if (was === line) return [];
    const own = mends.filter((one) => one.line === undefined || one.line === i + 1);
    if (
      stands(
        own.map(({ mend }) => mend),
        line,
      )
    )
      return [];
    return newParts(was, line)
      .filter((part) => !follows(own, part))
      .map((part) => `${String(i + 1)}: ${part === "" ? "(left out)" : part}`);
  });
};

/** Whole lines that come or go. */
const uncarriedLines = (
  mends: readonly LineMend[],
  before: readonly string[],
  after: readonly string[],
): readonly string[] => {
  const { removed, added, at } = difference(before, after);
  const isSaid = added.length === 0 ? follows(mends, "") : added.every((line) => follows(mends, line.trim()));
  return isSaid ? [] : [`${String(at + 1)}: ${String(removed.length)} lines for ${String(added.length)}`];
};

/** Whether a new part is what a mend says: word for word, one of the words it points at, a number of the range or a day
 *  of the form that it names; an empty one where it says to leave something out. */
const follows = (mends: readonly LineMend[], part: string): boolean => {
  const texts = mends.map(({ mend }) => mend);
  if (part === "") return saysToLeaveOut(texts, []) || texts.some((text) => text.includes("separator"));
  if (stands(texts, part) || words(part).every((word) => !/[\p{L}\p{N}]/u.test(word) || stands(texts, word)))
    return true;
  return mends.some(({ mend, expected = "" }) => {
    const [, least, most] = /from (-?[\d.]+) to (-?[\d.]+)/.exec(mend) ?? [];
    if (least !== undefined && /^-?[\d.]+$/.test(part))
      return Number(part) >= Number(least) && Number(part) <= Number(most);
    if (mend.includes("year-month-day") && /^\d{4}-\d\d-\d\d$/.test(part)) return true;
    return /one of|these|such as|rename|the unit/.test(mend) && stands([expected], part);
  });
};

/** The parts of a line that are not in the old one, in their order; an empty one where something only went. */
const newParts = (was: string, line: string): readonly string[] => {
  const [a, b] = [words(was), words(line)];
  const kept = commonWords(a, b);
  const parts: string[] = [];
  let at = 0;
  let open = "";
  for (const word of b) {
    if (word === kept[at]) {
      if (open.trim() !== "") parts.push(open.trim());
      open = "";
      at += 1;
    } else open += word;
  }
  if (open.trim() !== "") parts.push(open.trim());
  const bare = parts
    .map((part) => part.replace(/^[,;:"{}[\]\s]+|[,;:"{}[\]\s]+$/g, ""))
    .filter((part) => part !== "");
  return bare.length === 0 ? [""] : bare;
};

const words = (line: string): readonly string[] =>
  line.split(/([\s,;:"{}[\]]+)/).filter((word) => word !== "");

/** The longest run of words, gaps allowed, that both have. */
const commonWords = (a: readonly string[], b: readonly string[]): readonly string[] => {
  let above: readonly (readonly string[])[] = Array.from({ length: b.length + 1 }, () => []);
  for (const word of a) {
    const row: (readonly string[])[] = [[]];
    b.forEach((other, j) => {
      const [up = [], left = [], both = []] = [above[j + 1], row[j], above[j]];
      row.push(word === other ? [...both, word] : up.length >= left.length ? up : left);
    });
    above = row;
  }
  return above.at(-1) ?? [];
};
