// The inputs of an expected pressure as a person reads them: what it is, its value, how far off it may be.

import { type EngineKind, type ExpectedInput, type InputName, type UnitName, fromSi } from "@sealtrend/core";

interface Words {
  readonly name: string;
  readonly unit?: UnitName;
  /** Decimals of the value, where the size of the number does not say. */
  readonly places: number;
  readonly after?: string;
  /** The option that makes it known, where a person could find it out. */
  readonly option?: string;
}

export const inputWords: Readonly<Record<InputName, Words>> = {
  compressionRatio: { name: "compression ratio", places: 2 },
  size: { name: "size of the cylinder", unit: "cm3", places: 0, option: "bore" },
  shape: { name: "bore to stroke", places: 2, option: "stroke" },
  bore: { name: "bore", unit: "mm", places: 2 },
  stroke: { name: "stroke", unit: "mm", places: 2 },
  rod: { name: "connecting rod", unit: "mm", places: 0, option: "rod" },
  intakeCloses: {
    name: "intake closes",
    unit: "deg",
    places: 0,
    after: "after bottom",
    option: "intake-closes",
  },
  leak: { name: "leak", unit: "mm2", places: 2 },
  wall: { name: "cylinder wall", unit: "C", places: 0 },
  start: { name: "air when the intake closes", unit: "C", places: 0 },
  airTemperature: { name: "air", unit: "C", places: 0 },
  heatFactor: { name: "heat lost to the walls", places: 0 },
  hose: { name: "hose ahead of the valve", unit: "cm3", places: 1, option: "hose" },
  speed: { name: "cranking speed", unit: "rpm", places: 0, option: "speed" },
};

export const kindWords: Readonly<Record<EngineKind, string>> = {
  spark: "spark",
  motorcycle: "motorcycle",
  compression: "diesel",
};

/** A difference in a unit: a degree Celsius is as long as a kelvin. */
export const differenceIn = (unit: UnitName | undefined, amount: number): number =>
  unit === undefined || unit === "C" ? amount : fromSi(amount, unit);

const unitAfter = (unit: UnitName | undefined): string => (unit === undefined ? "" : ` ${unit}`);

const short = (value: number, places: number): string => String(Number(value.toFixed(places)));

/** `a healthy leak`, where none was given. */
export const inputName = ({ name, from }: ExpectedInput): string =>
  name === "leak" && from === "assumed" ? "a healthy leak" : inputWords[name].name;

/** `60 deg after bottom`; empty for a factor. */
export const inputValue = ({ name, value }: ExpectedInput): string => {
  const { unit, places, after } = inputWords[name];
  if (name === "heatFactor") return "";
  const number = short(unit === undefined ? value : fromSi(value, unit), places);
  return [`${number}${unitAfter(unit)}`, after].filter((part) => part !== undefined).join(" ");
};

/** `± 10 deg`, `× or / 1.6`; empty where the value is taken as it stands. */
export const inputDoubt = ({ name, deviation }: ExpectedInput): string => {
  if (deviation === undefined) return "";
  if (deviation.by === "times") return `× or / ${short(deviation.amount, 2)}`;
  const { unit, places } = inputWords[name];
  const amount = differenceIn(unit, deviation.amount);
  return `± ${short(amount, Math.max(places, amount < 1 ? 1 : 0))}${unitAfter(unit)}`;
};
