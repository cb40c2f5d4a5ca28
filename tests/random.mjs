// Numbers that look drawn by lot and are the same for the same seed on every machine, so that a failure can be seen again.

const mix = (state) => {
  let n = Math.imul(state ^ (state >>> 15), state | 1);
  n ^= n + Math.imul(n ^ (n >>> 7), n | 61);
  return (n ^ (n >>> 14)) >>> 0;
};

/** A 32-bit counter, mixed. */
const counter = (start) => {
  let state = start;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    return mix(state);
  };
};

/** Even numbers in 0 ... 1. */
export const evenly = (start) => {
  const next = counter(start);
  return () => next() / 2 ** 32;
};

/** A source of its own for each case of a run. */
export const randomOf = (seed, nth = 0) => {
  const next = counter((mix(seed + 0x9e3779b9) ^ mix(Math.imul(nth + 1, 0x85ebca6b))) >>> 0);
  /** A whole number from 0 to `most` - 1. */
  const below = (most) => next() % most;
  return {
    below,
    between: (least, most) => least + below(most - least + 1),
    pick: (list) => list[below(list.length)],
    chance: (share) => next() / 2 ** 32 < share,
  };
};
