// Which time the engine was apart: the one named, the one begun lately, or the next.

import { type Measurement, dayNumber } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { counted } from "../../render/words.ts";
import { usage } from "../usage.ts";

export interface Which {
  readonly teardown: number;
  /** Said aloud where it was not plain. */
  readonly asides: readonly string[];
}

/** An engine that nobody measured for so long was together meanwhile (judgement). */
const longest = 90;

/** The teardown that new figures belong to. @param day - of the new figures  @throws Stop 2 for a number that cannot be */
export const teardownFor = (
  args: Args,
  recorded: readonly Pick<Measurement, "teardown" | "date">[],
  day: string,
): Which => {
  const newest = newestOf(recorded);
  const isNew = args.flag("new-teardown");
  const named = numberNamed(args);
  if (named !== undefined && isNew)
    throw usage(
      "teardown-twice",
      `--teardown ${String(named)} and --new-teardown`,
      "one of them",
      "leave --new-teardown out",
    );
  if (named !== undefined && named > newest + 1)
    throw usage(
      "teardown-unknown",
      `--teardown ${String(named)}: ${newest === 0 ? "none is recorded yet" : `the newest is ${String(newest)}`}`,
      `1 to ${String(newest + 1)}`,
      `--teardown ${String(newest + 1)}, or leave it out`,
    );
  if (named !== undefined) return { teardown: named, asides: [] };
  if (isNew || newest === 0) return { teardown: newest + 1, asides: [] };
  const last = lastDay(recorded, newest);
  const days = dayNumber(day) - dayNumber(last);
  if (days <= longest) return { teardown: newest, asides: [] };
  const said = `teardown ${String(newest)} was last measured ${last}, ${counted(days, "day")} before: this begins teardown ${String(newest + 1)}; to add to the old one: --teardown ${String(newest)}`;
  return { teardown: newest + 1, asides: [said] };
};

/** The teardown to judge. @throws Stop 2 for one that is not recorded, 1 where none is */
export const recordedTeardown = (
  args: Args,
  recorded: readonly Pick<Measurement, "teardown">[],
  id: string,
): number => {
  const named = numberNamed(args);
  const numbers = [...new Set(recorded.map(({ teardown }) => teardown))].sort((a, b) => a - b);
  const newest = numbers.at(-1);
  if (newest === undefined)
    throw usage(
      "teardown-none",
      `${id} has no measurements yet`,
      "at least one typed line, such as: bore 3: 86.62 86.58 86.56 86.55 86.53 86.52 mm",
      `how: sealtrend how teardown ${id}; then a line a part in a file, and: sealtrend teardown ${id} --from FILE`,
      1,
    );
  if (named === undefined || numbers.includes(named)) return named ?? newest;
  throw usage(
    "teardown-unknown",
    `${id} has no teardown ${String(named)}`,
    `one of: ${numbers.join(", ")}`,
    `--teardown ${String(newest)}, or leave it out for the newest`,
  );
};

const numberNamed = (args: Args): number | undefined => {
  const typed = args.text("teardown")?.trim();
  if (typed === undefined) return undefined;
  if (/^[1-9]\d?$/.test(typed)) return Number(typed);
  throw usage(
    "teardown-number",
    `--teardown ${typed}`,
    "a number: 1 for the first time the engine was apart",
    "--teardown 1",
  );
};

const newestOf = (recorded: readonly Pick<Measurement, "teardown">[]): number =>
  Math.max(0, ...recorded.map(({ teardown }) => teardown));

const lastDay = (recorded: readonly Pick<Measurement, "teardown" | "date">[], of: number): string =>
  recorded
    .filter(({ teardown }) => teardown === of)
    .map(({ date }) => date)
    .reduce((so, date) => (date > so ? date : so), "");
