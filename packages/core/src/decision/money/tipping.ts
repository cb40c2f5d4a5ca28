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
}

/** Of the two tipping points, one each way, the nearer one on the scale of the input.
 *  @param now - the difference as it stands  @source handbook/decision.md 4 */
export const flipOf = (span: Span, difference: (at: number) => number, now: number): Flip | undefined => {
  const { beyond, value } = span;
  if (beyond.every((end) => difference(end) === now)) return undefined;
  const found = beyond.flatMap((end) => firstFlip(span, end, { difference, now }) ?? []);
  if (found.length === 0) return undefined;
  const away = (at: number): number => Math.abs(onScale(span, at) - onScale(span, value));
  const at = found.reduce((a, b) => (away(b) < away(a) ? b : a));
  return { at, where: placeOf(span, at) };
};

/** The difference is a straight line in a price, but for a kink or two; it bends gently in limit and years. */
const steps = 24;

/** Walks from the value to the end and halves the step in which the sign turns. */
const firstFlip = (
  span: Span,
  end: number,
  { difference, now }: { readonly difference: (at: number) => number; readonly now: number },
): number | undefined => {
  const acts = (place: number): boolean => difference(fromScale(span, place)) > 0;
  const [start, stop] = [onScale(span, span.value), onScale(span, end)];
  if (start === stop) return undefined;
  const place = (step: number): number => start + ((stop - start) * step) / steps;
  let step = 1;
  while (step <= steps && acts(place(step)) === now > 0) step += 1;
  if (step > steps) return undefined;
  let [same, turned] = [place(step - 1), place(step)];
  for (let round = 0; round < 50; round += 1) {
    const half = (same + turned) / 2;
    if (acts(half) === now > 0) same = half;
    else turned = half;
  }
  return fromScale(span, turned);
};

const placeOf = (span: Span, at: number): Flip["where"] => {
  const on = (one: number): number => onScale(span, one);
  const [value, place, low, high] = [on(span.value), on(at), on(span.range[0]), on(span.range[1])];
  if (place < low || place > high) return "outside";
  return place >= (value + low) / 2 && place <= (value + high) / 2 ? "half-range" : "range";
};

const onScale = ({ scale }: Span, value: number): number =>
  scale === "ratio" ? Math.log(value) : scale === "odds" ? Math.log(value / (1 - value)) : value;

const fromScale = ({ scale }: Span, place: number): number =>
  scale === "ratio" ? Math.exp(place) : scale === "odds" ? 1 / (1 + Math.exp(-place)) : place;
