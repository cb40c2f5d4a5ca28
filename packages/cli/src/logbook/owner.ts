// Who holds a lock or was in the middle of writing, and whether that process can still be at work.

import { uniqueName } from "./fingerprint.ts";
import type { World } from "./world.ts";

export interface Owner {
  readonly pid: number;
  readonly host: string;
  /** When the process started, in the system's own count; tells a reused process number. */
  readonly start?: string;
  /** Different for each lock and each write. */
  readonly nonce: string;
}

/** `gone`: certainly dead. `stale`: cannot be asked, but too old to be at work. `held`: wait for it. */
export type Standing = "gone" | "stale" | "held";

/** No command holds a lock longer than a second; ten minutes is beyond any doubt, and any clock that is a little off. */
const staleAfter = 10 * 60 * 1000;

export const newOwner = (world: World): Owner => {
  const { start } = world.processState(world.pid);
  return { pid: world.pid, host: world.host, nonce: uniqueName(), ...(start === undefined ? {} : { start }) };
};

/** Reads what an owner wrote; undefined if it is empty, torn or not ours. */
export const parseOwner = (text: string): Owner | undefined => {
  try {
    const { pid, host, start, nonce } = JSON.parse(text) as Record<string, unknown>;
    if (typeof pid !== "number" || !Number.isInteger(pid) || pid <= 0) return undefined;
    if (typeof host !== "string" || typeof nonce !== "string") return undefined;
    return { pid, host, nonce, ...(typeof start === "string" ? { start } : {}) };
  } catch {
    return undefined;
  }
};

/** @param writtenAt - when the owner wrote its mark [ms since 1970] */
export const standing = (world: World, owner: Owner | undefined, writtenAt: number): Standing => {
  const old = Math.abs(world.clock() - writtenAt) >= staleAfter;
  if (owner?.host !== world.host) return old ? "stale" : "held";
  const process = world.processState(owner.pid);
  if (!process.alive) return "gone";
  if (process.start !== undefined && owner.start !== undefined)
    return process.start === owner.start ? "held" : "gone";
  return old ? "stale" : "held";
};

/** The owner in words: `process 4711`, `process 4711 on barn-pc`. */
export const ownerText = (world: World, owner: Owner | undefined): string => {
  if (owner === undefined) return "an unknown process (its lock cannot be read)";
  const process = `process ${String(owner.pid)}`;
  return owner.host === world.host ? process : `${process} on ${JSON.stringify(owner.host).slice(1, -1)}`;
};
