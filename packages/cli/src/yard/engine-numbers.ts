// A number for each engine, in the order in which they come first, without keeping their names: 24 bytes an engine.

import { nameHash } from "./shard.ts";

/** A second, independent number of a name; its first 21 bits make 53 with the first: of a million engines two are taken for
 *  one in 1 of 10,000 yards, and then only answered side by side, for each row says its engine. */
const otherBasis = 0x01000193;

/** @returns the number of the engine, from 0 */
export const engineNumbers = (): ((name: string) => number) => {
  let keys = new Float64Array(1024);
  let numbers = new Uint32Array(1024);
  let count = 0;
  const slotOf = (key: number): number => {
    let slot = key % keys.length;
    while (keys[slot] !== 0 && keys[slot] !== key) slot = (slot + 1) % keys.length;
    return slot;
  };
  const grow = (): void => {
    const [old, oldNumbers] = [keys, numbers];
    keys = new Float64Array(2 * old.length);
    numbers = new Uint32Array(keys.length);
    old.forEach((key, i) => {
      if (key === 0) return;
      const slot = slotOf(key);
      keys[slot] = key;
      numbers[slot] = oldNumbers[i] ?? 0;
    });
  };
  return (name) => {
    const key = (nameHash(name, otherBasis) >>> 11) * 2 ** 32 + nameHash(name) + 1;
    const slot = slotOf(key);
    if (keys[slot] === key) return numbers[slot] ?? 0;
    keys[slot] = key;
    numbers[slot] = count;
    count += 1;
    if (2 * count > keys.length) grow();
    return count - 1;
  };
};
