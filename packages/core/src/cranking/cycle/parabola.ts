// The top of a sampled curve, between its samples.

const sample = (list: Float64Array, i: number): number => list[i] ?? Number.NaN;

/** The highest sample and how far from it, in steps, the parabola through it and its neighbours has its top. */
export const summit = (list: Float64Array): { readonly at: number; readonly offset: number } => {
  let at = 0;
  for (let i = 1; i < list.length; i++) if (sample(list, i) > sample(list, at)) at = i;
  if (at === 0 || at === list.length - 1) return { at, offset: 0 };
  const [before, top, after] = [sample(list, at - 1), sample(list, at), sample(list, at + 1)];
  return { at, offset: (before - after) / (2 * (before - 2 * top + after)) };
};

/** A trace between its samples, by the parabola through three of them. */
export const onParabola = (list: Float64Array, at: number, offset: number): number => {
  if (offset === 0) return sample(list, at);
  const [before, here, after] = [sample(list, at - 1), sample(list, at), sample(list, at + 1)];
  return here + (offset * (after - before)) / 2 + (offset * offset * (before - 2 * here + after)) / 2;
};
