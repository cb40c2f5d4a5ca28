// From a moment to a column: true to time, so that long silences look long.

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Least and greatest of some finite values, however many; of none, Infinity and -Infinity. */
export const extent = (values: readonly number[]): Span => {
  let from = Infinity;
  let to = -Infinity;
  for (const value of values) {
    from = Math.min(from, value);
    to = Math.max(to, value);
  }
  return { from, to };
};

/** The column of `x` on an axis of `columns` columns from `from` to `to`; both ends are columns.
 *  @param span - `to` above `from` */
export const columnOf = (x: number, span: Span, columns: number): number =>
  Math.min(columns - 1, Math.max(0, Math.round(((x - span.from) / (span.to - span.from)) * (columns - 1))));

/** Moves columns apart so that each has its own, in order, as little as it takes; where there are more of them
 *  than columns they stay where they are.
 *  @param wanted - columns, rising or equal */
export const spread = (wanted: readonly number[], columns: number): readonly number[] => {
  if (wanted.length > columns) return wanted;
  const placed: number[] = [];
  for (const column of wanted) placed.push(Math.max(column, (placed.at(-1) ?? -1) + 1));
  let free = columns - 1;
  for (let i = placed.length - 1; i >= 0; i -= 1) {
    placed[i] = Math.min(placed[i] ?? 0, free);
    free = (placed[i] ?? 0) - 1;
  }
  return placed;
};
