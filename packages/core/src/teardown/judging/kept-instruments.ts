// What a mended reading was taken with: the instrument of the one it stands instead of, unless it names its own.

import type { Measurement } from "../../record/index.ts";

type Tool = Pick<Measurement, "instrument" | "resolution">;

/** What was read at a place since the last row that stands instead. */
interface Since {
  readonly rows: readonly Measurement[];
  /** What that row kept: rows behind it that name none repeat it. */
  readonly kept?: Tool;
}

const nothing: Since = { rows: [] };

/** The rows in their order. Where several instruments were there before, none of them is the one, and nothing is kept. */
export const withKeptInstruments = (
  rows: readonly Measurement[],
  placeOf: (row: Measurement) => string,
): readonly Measurement[] => {
  const places = new Map<string, Since>();
  return rows.map((row) => {
    const place = placeOf(row);
    const before = places.get(place) ?? nothing;
    const isInstead = row.instead === true;
    const kept = isInstead ? toolOfAll(before.rows, row) : before.kept;
    const now = kept === undefined || isNamed(row) ? row : { ...row, ...kept };
    places.set(place, {
      rows: [...(isInstead ? [] : before.rows), now],
      ...(kept === undefined ? {} : { kept }),
    });
    return now;
  });
};

const isNamed = ({ instrument, resolution }: Tool): boolean =>
  instrument !== undefined || resolution !== undefined;

/** Leaves are no gauge: what is read the one way is not read with the tool of the other. */
const toolOfAll = (rows: readonly Measurement[], now: Measurement): Tool | undefined => {
  const [first] = rows;
  if (first === undefined || !isNamed(first) || isNamed(now)) return undefined;
  const { instrument, resolution } = first;
  const isOne = rows.every(
    (one) =>
      one.instrument === instrument && one.resolution === resolution && one.value.kind === now.value.kind,
  );
  if (!isOne) return undefined;
  return {
    ...(instrument === undefined ? {} : { instrument }),
    ...(resolution === undefined ? {} : { resolution }),
  };
};
