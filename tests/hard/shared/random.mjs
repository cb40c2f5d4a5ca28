// Numbers that look drawn by lot and are the same for the same seed, so that a failure can be seen again.

const mix = (state) => {
  let n = Math.imul(state ^ (state >>> 15), state | 1);
  n ^= n + Math.imul(n ^ (n >>> 7), n | 61);
  return (n ^ (n >>> 14)) >>> 0;
};

/** A source of its own for each case of a run. */
export const randomOf = (seed, nth = 0) => {
  let state = (mix(seed + 0x9e3779b9) ^ mix(Math.imul(nth + 1, 0x85ebca6b))) >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    return mix(state);
  };
  /** A whole number from 0 to `most` - 1. */
  const below = (most) => next() % most;
  return {
    below,
    between: (least, most) => least + below(most - least + 1),
    pick: (list) => list[below(list.length)],
    chance: (share) => next() / 2 ** 32 < share,
  };
};
