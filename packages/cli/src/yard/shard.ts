// Which engines a shard answers for: a number from the name of the engine alone, so that every process, on whatever machine,
// and every later version picks the same.

/** FNV-1a, 32 bits, of the name in UTF-8. @param basis - the usual one, or another for a second, independent number */
export const nameHash = (name: string, basis = 0x811c9dc5): number => {
  let hash = basis;
  for (const byte of Buffer.from(name, "utf8")) hash = Math.imul(hash ^ byte, 0x01000193);
  return hash >>> 0;
};

export interface Shard {
  /** From 1. */
  readonly number: number;
  readonly of: number;
}

/** Whether this engine is of the shard; all are where there is none. */
export const isOfShard = (name: string, shard: Shard | undefined): boolean =>
  shard === undefined || nameHash(name) % shard.of === shard.number - 1;
