// The figures of a teardown as rows under the labels of a part: of each place the figure that decides.

import type { MeasuredPart, TeardownAssessment, TeardownItem } from "@sealtrend/core";
import { type Standing, counting, rulingVerdict, standingOf, standings, worst } from "./teardown-standing.ts";
import { figureName } from "./teardown-words.ts";

export interface FigureRow {
  /** `taper`, `ring 1 end gap`. */
  readonly name: string;
  readonly quantity: string;
  /** By label; a part without labels has its only figure under "". */
  readonly cells: ReadonlyMap<string, TeardownItem>;
  readonly standing: Standing;
}

/** All that was measured of one kind of part. */
export interface Block {
  readonly part: MeasuredPart;
  readonly labels: readonly string[];
  /** Labels of which nothing was measured at all, with a limit or without. */
  readonly unmeasured: readonly string[];
  readonly rows: readonly FigureRow[];
  readonly standing: Standing;
}

/** The blocks, what is outside first; inside a block the rows alike. Figures without a limit have no row unless nothing
 *  else is there. */
export const blocksOf = (assessment: TeardownAssessment, cylinders: readonly string[]): readonly Block[] => {
  const items = counting(assessment);
  const parts = [...new Set(items.map(({ part }) => part))];
  return parts.map((part) => blockOf(part, items, assessment, cylinders)).sort((a, b) => byStanding(a, b));
};

const byStanding = (a: { readonly standing: Standing }, b: { readonly standing: Standing }): number =>
  standings.indexOf(a.standing) - standings.indexOf(b.standing);

const blockOf = (
  part: MeasuredPart,
  all: readonly TeardownItem[],
  { counts }: TeardownAssessment,
  cylinders: readonly string[],
): Block => {
  const items = all.filter((item) => item.part === part);
  const judged = items.filter(({ verdicts }) => verdicts.length > 0);
  const told = judged.length > 0 ? judged : items;
  const names = [...new Set(told.map(figureName))];
  const rows = names
    .map((name) => {
      const own = told.filter((item) => figureName(item) === name);
      return rowOf(name, own);
    })
    .sort(byStanding);
  const missing = counts.filter((one) => one.part === part).flatMap((one) => one.missing);
  const measured = new Set(items.map(({ label }) => label ?? ""));
  const labels = inOrder([...new Set([...measured, ...missing])], cylinders);
  return {
    part,
    labels,
    unmeasured: labels.filter((label) => !measured.has(label)),
    rows,
    standing: worst(rows.map(({ standing }) => standing)),
  };
};

const rowOf = (name: string, items: readonly TeardownItem[]): FigureRow => {
  const labels = [...new Set(items.map(({ label }) => label ?? ""))];
  const cells = new Map(
    labels.flatMap((label) => {
      const own = items.filter((item) => (item.label ?? "") === label);
      const decides = deciding(own);
      return decides === undefined ? [] : [[label, decides] as const];
    }),
  );
  const standing = worst([...cells.values()].map((item) => standingOf(item)));
  const [first] = items;
  const isOneOfMany = standing === "no-limit" && cells.size < items.length && first?.quantity === "diameter";
  return {
    name: isOneOfMany ? (wearsSmaller(first) ? "smallest" : "largest") : name,
    quantity: first?.quantity ?? "",
    cells,
    standing,
  };
};

/** Of what wears from outside the smallest size tells, of all else the largest figure. */
const wearsSmaller = ({ part, quantity }: TeardownItem): boolean =>
  quantity === "diameter" && ["main", "pin", "piston", "stem"].includes(part);

/** The one that is furthest from conforming. */
export const deciding = (items: readonly TeardownItem[]): TeardownItem | undefined =>
  items.reduce<TeardownItem | undefined>(
    (so, item) => (so === undefined || isWorse(item, so) ? item : so),
    undefined,
  );

/** Further from conforming; without a limit the one that wear has gone furthest. */
const isWorse = (item: TeardownItem, than: TeardownItem): boolean => {
  const [a, b] = [item, than].map((one) => standings.indexOf(standingOf(one)));
  if (a !== b) return (a ?? 0) < (b ?? 0);
  const [p, q] = [rulingVerdict(item)?.probability, rulingVerdict(than)?.probability];
  if (p !== undefined && q !== undefined && Math.abs(p - q) > 1e-9) return p < q;
  const isLarger = Math.abs(item.value) > Math.abs(than.value);
  return wearsSmaller(item) ? !isLarger : isLarger;
};

/** Cylinders as the engine numbers them, journals by number, a valve after its cylinder. */
const inOrder = (labels: readonly string[], cylinders: readonly string[]): readonly string[] => {
  const place = (label: string): number => {
    const at = cylinders.findIndex((cylinder) => cylinder === label || isValveOf(label, cylinder));
    return at >= 0 ? at : cylinders.length + (Number.parseInt(label, 10) || 0);
  };
  return [...labels].sort((a, b) => place(a) - place(b) || (a < b ? 1 : -1));
};

const isValveOf = (label: string, cylinder: string): boolean =>
  label.startsWith(cylinder) && /^(in|ex)\d*$/.test(label.slice(cylinder.length));
