// Whether the numbers of a screen are those of its document: each is looked up as it stands, as a percent, and in the
// units a screen may be written in, within the rounding of its own last digit.

const psi = 6.894757293168;

interface Found {
  readonly values: readonly number[];
  readonly texts: readonly string[];
}

const everythingIn = (value: unknown): Found => {
  if (typeof value === "number") return { values: [value], texts: [] };
  if (typeof value === "string") return { values: [], texts: [value] };
  if (typeof value !== "object" || value === null) return { values: [], texts: [] };
  const parts = Object.values(value).map(everythingIn);
  return { values: parts.flatMap(({ values }) => values), texts: parts.flatMap(({ texts }) => texts) };
};

/** Ways in which a value of a document may be printed. @param perYear - what makes a year of a slope */
const printed = (value: number, perYear: number): number[] => [
  value,
  value * 10,
  value * 100,
  value / psi,
  value / 100,
  value / 1000,
  Number(value.toPrecision(3)),
  Math.expm1(value) * 100,
  Math.expm1(-value) * 100,
  Math.expm1(value * perYear) * 100,
  Math.expm1(-value * perYear) * 100,
];

/** Words of ours that hold a number which is no result. */
const constants =
  /[89] chances in 10|about 1 in \d+ by chance|1 healthy engine in 20|mean of (?:\d to )?\d|--cylinder \S+|1013 hPa|each 1000 \S+|\/1000 \S+/g;
const names = /\d{4}-\d{2}(?:-\d{2}[a-z]*)?/g;

/** Numbers of the screen that the document does not hold. @param labels - of the cylinders, which are names */
export const numbersLost = (
  screen: string,
  document: unknown,
  labels: readonly string[] = [],
): readonly string[] => {
  const { values, texts } = everythingIn(document);
  const { axis } = document as { axis?: { perYear?: number } };
  const known = values.flatMap((value) => printed(value, axis?.perYear ?? 1));
  const own = new Set([...labels, ...Array.from({ length: 28 }, (_, i) => String(i + 1))]);
  const said = new Set(texts.flatMap((text) => text.match(/\d+(?:\.\d+)?/g) ?? []));
  const shown =
    screen
      .replace(constants, " ")
      .replace(names, " ")
      .match(/\d+(?:\.\d+)?/g) ?? [];
  return shown.filter((text) => {
    if (own.has(text) || said.has(text)) return false;
    const half = 0.5 * 10 ** -(text.split(".")[1]?.length ?? 0) * (1 + 1e-6);
    return !known.some((value) => Math.abs(Math.abs(value) - Number(text)) <= half);
  });
};
