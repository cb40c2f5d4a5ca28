// What happens to one file, so that it can be done, undone, and recognised half done: some bytes give way to others.

import { sha256 } from "./fingerprint.ts";

export interface Delta {
  /** The real path of the file. */
  readonly path: string;
  /** Where the bytes that differ begin. */
  readonly at: number;
  readonly removed: Uint8Array;
  readonly added: Uint8Array;
  /** SHA-256 of the whole file before and after; absent where there is no file. */
  readonly before?: string;
  readonly after?: string;
}

/** `append` and `truncate` touch only the end of the file and are done in place. */
export type DeltaKind = "create" | "remove" | "append" | "truncate" | "replace";

/** The delta between two states of a file; undefined where they are the same. */
export const deltaBetween = (
  path: string,
  before: Uint8Array | undefined,
  after: Uint8Array | undefined,
): Delta | undefined => {
  if (before === undefined && after === undefined) return undefined;
  if (before !== undefined && after !== undefined && Buffer.from(before).equals(after)) return undefined;
  const old = before ?? new Uint8Array();
  const now = after ?? new Uint8Array();
  const shorter = Math.min(old.length, now.length);
  let at = 0;
  while (at < shorter && old[at] === now[at]) at += 1;
  let tail = 0;
  while (tail < shorter - at && old[old.length - 1 - tail] === now[now.length - 1 - tail]) tail += 1;
  return {
    path,
    at,
    removed: old.slice(at, old.length - tail),
    added: now.slice(at, now.length - tail),
    ...(before === undefined ? {} : { before: sha256(before) }),
    ...(after === undefined ? {} : { after: sha256(after) }),
  };
};

/** The delta that takes another one back. */
export const inverse = ({ path, at, removed, added, before, after }: Delta): Delta => ({
  path,
  at,
  removed: added,
  added: removed,
  ...(after === undefined ? {} : { before: after }),
  ...(before === undefined ? {} : { after: before }),
});

/** @param size - of the file before [bytes] */
export const kindOf = ({ at, removed, added, before, after }: Delta, size: number): DeltaKind => {
  if (before === undefined) return "create";
  if (after === undefined) return "remove";
  if (removed.length === 0 && at === size) return "append";
  if (added.length === 0 && at + removed.length === size) return "truncate";
  return "replace";
};

/** The whole file after the delta. */
export const changed = (before: Uint8Array, { at, removed, added }: Delta): Uint8Array =>
  Buffer.concat([before.subarray(0, at), added, before.subarray(at + removed.length)]);
