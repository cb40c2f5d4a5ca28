// Files beside ours that look like copies of them: left by a sync folder, a file manager or an editor. Nobody reads them,
// and a reading may stand only in the copy.

import { basename, join } from "node:path";

import type { World } from "./world.ts";

export interface Copy {
  readonly path: string;
  /** The name it looks like a copy of. */
  readonly of: string;
}

const ours = [
  "logbook.json",
  "gauges.csv",
  "engine.json",
  "tests.csv",
  "services.csv",
  "notes.csv",
  "measurements.csv",
  "amendments.csv",
];

/** `tests (1).csv`, `tests - Copy.csv`, `Copy of tests.csv`, `tests (conflicted copy 2026-05-02).csv`, `tests.csv~`,
 *  `tests.csv.bak`, `tests.sync-conflict-20260502.csv`, `#tests.csv#`, `.tests.csv.swp`; in the order of their names. */
export const siblingsThatLookLikeCopies = ({ fs }: World, folder: string): readonly Copy[] =>
  [...fs.readdirSync(folder)].sort().flatMap((name) => {
    const of = ours.find((own) => looksLike(name, own));
    return of === undefined ? [] : [{ path: join(folder, name), of }];
  });

const looksLike = (name: string, own: string): boolean => {
  const lower = name.normalize("NFC").toLowerCase();
  if (name === own || isHousekeeping(lower, own)) return false;
  if (lower === own) return true; // `Tests.csv` beside `tests.csv`
  const extension = own.slice(own.lastIndexOf("."));
  const stem = basename(own, extension);
  const afterStem = lower.startsWith(stem) && /^[ ._(~-]/.test(lower.slice(stem.length));
  const isEdited =
    lower === `#${own}#` || (lower.startsWith(`.${own}.sw`) && lower.length === own.length + 5);
  return (afterStem && lower.includes(extension)) || /[ _-]/.test(charBefore(lower, own)) || isEdited;
};

/** The locks and unfinished files of this tool and of spreadsheets. */
const isHousekeeping = (name: string, own: string): boolean =>
  name.startsWith(`${own}.lock`) || /^\.(?:.+\.tmp|~lock\..+#)$/.test(name);

const charBefore = (name: string, own: string): string =>
  name.endsWith(own) && name.length > own.length ? name.charAt(name.length - own.length - 1) : "";
