// The known words a mistyped one may have meant. They are offered, never taken.

const most = 3;
const longest = 40;

/** Up to three of `words`, nearest first: those it is the beginning of, else those a few letters away. */
export const nearest = (typed: string, words: readonly string[]): readonly string[] => {
  const wanted = typed.toLowerCase();
  if (/^-*$/.test(wanted) || wanted.length > longest) return [];
  const begun = words.filter((word) => word.toLowerCase().startsWith(wanted));
  if (begun.length > 0) return begun.slice(0, most);
  const near = words
    .map((word) => ({ word, far: distance(wanted, word.toLowerCase()) }))
    .filter(({ word, far }) => far <= Math.floor(Math.min(word.length, wanted.length) / 3))
    .sort((a, b) => a.far - b.far);
  return near
    .filter(({ far }) => far === near[0]?.far)
    .map(({ word }) => word)
    .slice(0, most);
};

/** Letters to insert, delete, change or swap with a neighbour. */
const distance = (a: string, b: string): number => {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Infinity;
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    rows.push(row);
    for (let j = 1; j <= b.length; j++) {
      const change = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row[j] = Math.min(
        change,
        at(i - 1, j) + 1,
        at(i, j - 1) + 1,
        swapped ? at(i - 2, j - 2) + 1 : Infinity,
      );
    }
  }
  return at(a.length, b.length);
};
