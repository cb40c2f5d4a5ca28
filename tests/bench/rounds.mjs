// Variants measured side by side: every round runs each of them once, in random order, so that a busy machine slows them
// alike. Ratios are taken within a round.

const shuffled = (list) =>
  list
    .map((item) => ({ item, key: Math.random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** @param measure - milliseconds of one variant @returns a map from the variant's name to milliseconds, a round;
 *  the first round is thrown away */
export const interleaved = (variants, rounds, measure) =>
  Array.from(
    { length: rounds + 1 },
    () => new Map(shuffled(variants).map((variant) => [variant.name, measure(variant)])),
  ).slice(1);

/** Median time of a variant, and the median of its ratio to another within a round. */
export const against = (all, name, base) => ({
  milliseconds: median(all.map((times) => times.get(name))),
  ratio: median(all.map((times) => times.get(name) / times.get(base))),
});
