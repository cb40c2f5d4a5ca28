// Round numbers for an axis: the step of the value scale, and where the time axis is labelled.

const mantissas = [1, 2, 2.5, 5, 10];

/** The least of 1, 2, 2.5, 5 · 10^k that is not below `least`. @param least - above 0 */
const niceStep = (least: number): number => {
  const power = 10 ** Math.floor(Math.log10(least));
  return (mantissas.find((m) => m * power >= least * (1 - 1e-9)) ?? 10) * power;
};

/** Decimals that a multiple of `step` needs, 0 … 9. */
export const decimalsOf = (step: number): number => {
  const exact = (decimals: number): boolean => {
    const scaled = step * 10 ** decimals;
    return scaled >= 0.999 && Math.abs(scaled - Math.round(scaled)) < 1e-6 * scaled;
  };
  return [0, 1, 2, 3, 4, 5, 6, 7, 8].find(exact) ?? 9;
};

/** A scale of rows; row r stands for (first + r) · step, so every label is a round number and every rounding exact. */
export interface Scale {
  readonly first: number;
  readonly step: number;
}

// What is closer together than this share of its size is level: no gauge tells it apart.
const level = 1e-6;

/** The finest scale on which `low` … `high` fits `rows` rows: step 1, 2, 2.5 or 5 · 10^k, least value
 *  step·floor(low/step). Level values get a step within 0.5 % of their size, and the middle row.
 *  @param rows - 2 or more */
export const scaleOf = (low: number, high: number, rows: number): Scale => {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const span = high - low;
  if (span <= Math.max(level, size * level)) {
    const step = size <= level ? 1 : niceStep(size / 1000);
    return { first: Math.round(low / step) - Math.floor((rows - 1) / 2), step };
  }
  let step = niceStep(span / (rows - 1));
  const first = (): number => Math.floor(low / step + 1e-9);
  while (high / step > first() + rows - 1 + 1e-9) step = niceStep(step * 1.01);
  return { first: first(), step };
};

export interface Tick {
  readonly x: number;
  readonly text: string;
}

/** Round numbers (1, 2, 5 · 10^k, no fractions) from `from` to `to`, at most `most`. */
const numberTicks = (from: number, to: number, most: number): readonly Tick[] => {
  const atLeast = Math.max(1, (to - from) / most);
  const power = 10 ** Math.floor(Math.log10(atLeast));
  const step = ([1, 2, 5].find((m) => m * power >= atLeast * (1 - 1e-9)) ?? 10) * power;
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.max(0, Math.min(most, Math.floor(to / step + 1e-9) - first + 1));
  return Array.from({ length: count }, (_, i) => ({
    x: (first + i) * step,
    text: String((first + i) * step),
  }));
};

const monthTicks = (from: number, to: number, most: number): readonly Tick[] => {
  const first = Math.ceil(from * 12 - 1e-6);
  const last = Math.floor(to * 12 + 1e-6);
  const step = [1, 2, 3, 6].find((months) => (last - first) / months < most) ?? 12;
  const months = Array.from({ length: last - first + 1 }, (_, i) => first + i).filter(
    (month) => month % step === 0,
  );
  return months.map((month) => {
    const year = Math.floor(month / 12);
    return { x: month / 12, text: `${String(year)}-${String(month - year * 12 + 1).padStart(2, "0")}` };
  });
};

/** Ticks at round meter readings. @param wide - columns of the axis */
export const meterTicks = (from: number, to: number, wide: number): readonly Tick[] =>
  numberTicks(from, to, Math.max(2, Math.floor(wide / 10)));

/** Ticks at the turn of years, or at months where fewer than two years turn; x is a year with fraction.
 *  @param wide - columns of the axis */
export const dateTicks = (from: number, to: number, wide: number): readonly Tick[] => {
  const years = numberTicks(from, to, Math.max(2, Math.floor(wide / 8)));
  return years.length >= 2 ? years : monthTicks(from, to, Math.max(2, Math.floor(wide / 10)));
};
