// The unit table: every unit the tool reads or writes, by exact definition.
// Sources: inch, foot, pound: International Yard and Pound agreement of 1959 (exact);
// kgf: standard gravity 9.80665 m/s2 (CGPM 1901, exact); inHg: conventional mercury column at 0 degC,
// 13595.1 kg/m3 x 9.80665 m/s2 x 0.0254 m (NIST SP 811 prints 3.386389 kPa).

/** What a unit measures. */
export type Dimension =
  "pressure" | "temperature" | "length" | "speed" | "volume" | "voltage" | "area" | "angle" | "force";

interface Unit {
  readonly dimension: Dimension;
  /** SI value = written value * factor + offset. */
  readonly factor: number;
  readonly offset?: number;
}

const inch = 0.0254;
const poundForce = 0.45359237 * 9.80665;
const psi = poundForce / (inch * inch);
const rankine = 5 / 9;

const table = {
  Pa: { dimension: "pressure", factor: 1 },
  hPa: { dimension: "pressure", factor: 100 },
  kPa: { dimension: "pressure", factor: 1_000 },
  MPa: { dimension: "pressure", factor: 1_000_000 },
  mbar: { dimension: "pressure", factor: 100 },
  bar: { dimension: "pressure", factor: 100_000 },
  psi: { dimension: "pressure", factor: psi },
  "kgf/cm2": { dimension: "pressure", factor: 98_066.5 },
  inHg: { dimension: "pressure", factor: 13_595.1 * 9.80665 * inch },
  mmHg: { dimension: "pressure", factor: 13_595.1 * 9.80665 * 0.001 },
  K: { dimension: "temperature", factor: 1 },
  C: { dimension: "temperature", factor: 1, offset: 273.15 },
  F: { dimension: "temperature", factor: rankine, offset: 459.67 * rankine },
  m: { dimension: "length", factor: 1 },
  cm: { dimension: "length", factor: 0.01 },
  mm: { dimension: "length", factor: 0.001 },
  um: { dimension: "length", factor: 1e-6 },
  ft: { dimension: "length", factor: 0.3048 },
  in: { dimension: "length", factor: inch },
  thou: { dimension: "length", factor: inch / 1000 },
  rpm: { dimension: "speed", factor: 1 },
  m3: { dimension: "volume", factor: 1 },
  L: { dimension: "volume", factor: 0.001 },
  cm3: { dimension: "volume", factor: 1e-6 },
  ml: { dimension: "volume", factor: 1e-6 },
  in3: { dimension: "volume", factor: inch ** 3 },
  V: { dimension: "voltage", factor: 1 },
  mm2: { dimension: "area", factor: 1e-6 },
  deg: { dimension: "angle", factor: 1 },
  N: { dimension: "force", factor: 1 },
  kgf: { dimension: "force", factor: 9.80665 },
  lbf: { dimension: "force", factor: poundForce },
} as const satisfies Record<string, Unit>;

/** Every unit that is read or written, by its symbol. */
export type UnitName = keyof typeof table;
export type UnitOf<D extends Dimension> = {
  [N in UnitName]: (typeof table)[N]["dimension"] extends D ? N : never;
}[UnitName];
/** The units that a pressure gauge may be marked in. */
export type PressureUnit = "psi" | "kPa" | "bar" | "MPa" | "kgf/cm2";

/** The units a compression gauge may be marked in. */
export const gaugeUnits: readonly PressureUnit[] = ["psi", "kPa", "bar", "MPa", "kgf/cm2"];

const spellings: Readonly<Record<string, UnitName>> = {
  degc: "C",
  "°c": "C",
  celsius: "C",
  degf: "F",
  "°f": "F",
  fahrenheit: "F",
  '"': "in",
  inch: "in",
  inches: "in",
  "'": "ft",
  feet: "ft",
  foot: "ft",
  metre: "m",
  meter: "m",
  metres: "m",
  meters: "m",
  µm: "um",
  μm: "um",
  micron: "um",
  "kg/cm2": "kgf/cm2",
  "kgf/cm²": "kgf/cm2",
  "kg/cm²": "kgf/cm2",
  psig: "psi",
  "r/min": "rpm",
  "1/min": "rpm",
  cc: "cm3",
  "cm³": "cm3",
  "mm²": "mm2",
  l: "L",
  volt: "V",
  volts: "V",
  "°": "deg",
  degrees: "deg",
  millibar: "mbar",
  "in hg": "inHg",
};

const byLowerCase: ReadonlyMap<string, UnitName> = new Map([
  ...Object.entries(spellings),
  ...(Object.keys(table) as UnitName[]).map((name) => [name.toLowerCase(), name] as const),
]);

/** The unit a text names, with the usual spellings; `MPa` and `mPa` are told apart by refusing the second. */
export const unitNamed = (text: string): UnitName | undefined => {
  const trimmed = text.trim();
  if (Object.hasOwn(table, trimmed)) return trimmed as UnitName;
  if (trimmed === "mPa") return undefined;
  return byLowerCase.get(trimmed.toLowerCase());
};

/** The gauge unit a text names, with the usual spellings; undefined for any other unit. */
export const gaugeUnitNamed = (text: string): PressureUnit | undefined => {
  const unit = unitNamed(text);
  return gaugeUnits.find((name) => name === unit);
};

/** What a unit measures. */
export const dimensionOf = (unit: UnitName): Dimension => table[unit].dimension;

/** A value in `unit` as the SI value of its dimension (rpm for speed, degrees for angle). */
export const toSi = (value: number, unit: UnitName): number => {
  const { factor, offset = 0 }: Unit = table[unit];
  return value * factor + offset;
};

/** The SI value of a dimension in `unit`; the inverse of toSi. */
export const fromSi = (si: number, unit: UnitName): number => {
  const { factor, offset = 0 }: Unit = table[unit];
  return (si - offset) / factor;
};

/** All units of one dimension, for a message. */
export const unitsOf = (dimension: Dimension): readonly UnitName[] =>
  (Object.keys(table) as UnitName[]).filter((name) => table[name].dimension === dimension);
