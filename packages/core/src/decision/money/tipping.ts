// Where a difference turns its sign as one input moves, and how far that lies from the input as it stands.

/** An input with its range, and how far beyond it a tipping point is looked for. */
export interface Span {
  readonly value: number;
  readonly range: readonly [low: number, high: number];
  readonly beyond: readonly [low: number, high: number];
  /** Prices and odds by factors, the rest by steps. */
  readonly scale: "ratio" | "plain" | "odds";
}

/** Nearest value at which the sign turns, and where it lies. */
export interface Flip {
  readonly at: number;
  readonly where: "half-range" | "range" | "outside";
  /** How far that is: 1 = the end of its range on that side. */
  readonly away: number;
}

/** Of the two tipping points, one each way, the nearer one on the scale of the input.
 *  @param now - the difference as it stands  @source handbook/decision.md 4 */
export const flipOf = (span: Span, difference: (at: number) => number, now: number): Flip | undefined => {
  if (span.beyond.every((end) => difference(end) === now)) return undefined;
  const at = nearestTurned(span, (value) => difference(value) > 0 !== now > 0, fine);
  return at === undefined ? undefined : placed(span, at);
};

/** A walk outward: steps to the end, the nearer the finer, for the nearest one counts, and halvings of the step that turns. */
export interface Walk {
  readonly steps: number;
  readonly halvings: number;
}

/** The difference is a straight line in a price, but for a kink or two; it bends gently in limit and years. */
const fine: Walk = { steps: 40, halvings: 40 };

/** The nearest value, of those found each way, at which something has turned.
 *  @param turned - false at the value as it stands */
export const nearestTurned = (
  span: Span,
  turned: (at: number) => boolean,
  walk: Walk,
): number | undefined => {
  const found = span.beyond.flatMap((end) => firstTurned(span, turned, { end, ...walk }) ?? []);
  const away = (at: number): number => Math.abs(onScale(span, at) - onScale(span, span.value));
  return found.toSorted((a, b) => away(a) - away(b))[0];
};

/** The end of half its range, or of all of it, at which the sign has turned: no more than the margin asks for. */
export const flipWithin = (span: Span, difference: (at: number) => number, now: number): Flip | undefined => {
  const { value, range } = span;
  const half = (end: number): number => fromScale(span, (onScale(span, value) + onScale(span, end)) / 2);
  const turned = (at: number): boolean => difference(at) > 0 !== now > 0;
  const at = range.map(half).find(turned) ?? range.find(turned);
  return at === undefined ? undefined : placed(span, at);
};

/** Where a value lies against the range of its input. */
export const placed = (span: Span, at: number): Flip => {
  const away = awayOf(span, at);
  return { at, where: away > 1 ? "outside" : away > 0.5 ? "range" : "half-range", away };
};

const firstTurned = (
  span: Span,
  turned: (at: number) => boolean,
  { end, steps, halvings }: Walk & { readonly end: number },
): number | undefined => {
  const isTurned = (place: number): boolean => turned(fromScale(span, place));
  const [start, stop] = [onScale(span, span.value), onScale(span, end)];
  if (start === stop) return undefined;
  const place = (step: number): number => start + (stop - start) * (step / steps) ** 2;
  let step = 1;
  while (step <= steps && !isTurned(place(step))) step += 1;
  if (step > steps) return undefined;
  let [same, beyond] = [place(step - 1), place(step)];
  for (let round = 0; round < halvings; round += 1) {
    const half = (same + beyond) / 2;
    if (isTurned(half)) beyond = half;
    else same = half;
  }
  return fromScale(span, beyond);
};

/** By the other side of the range where there is none on this. */
const awayOf = (span: Span, at: number): number => {
  const on = (one: number): number => onScale(span, one);
  const [value, place, low, high] = [on(span.value), on(at), on(span.range[0]), on(span.range[1])];
  const side = place < value ? value - low : high - value;
  return Math.abs(place - value) / (side > 0 ? side : high - low);
};

const onScale = ({ scale }: Span, value: number): number =>
  scale === "ratio" ? Math.log(value) : scale === "odds" ? Math.log(value / (1 - value)) : value;

const fromScale = ({ scale }: Span, place: number): number =>
  scale === "ratio" ? Math.exp(place) : scale === "odds" ? 1 / (1 + Math.exp(-place)) : place;
