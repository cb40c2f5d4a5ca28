// The inputs of an expected pressure as a person reads them: what it is, its value, how far off it may be.

import type { EngineKind, ExpectedInput, InputName } from "@sealtrend/core";
import type { Known } from "../../commands/expect-steps/expect-known.ts";
import { typedOf } from "../../commands/expect-steps/expect-stated.ts";
import { type System, type Units, asTold, held, differenceIn, short, unitTold } from "./expect-units.ts";

interface Words {
  readonly name: string;
  readonly units?: Units;
  /** Decimals of a plain number. */
  readonly places?: number;
  readonly after?: string;
  /** The option that makes it known, where a person could find it out. */
  readonly option?: string;
}

const both = (unit: Units["metric"][0], places: number): Units => ({
  metric: [unit, places],
  us: [unit, places],
});
const size: Units = { metric: ["mm", 2], us: ["in", 3] };
const warmth: Units = { metric: ["C", 0], us: ["F", 0] };

export const inputWords: Readonly<Record<InputName, Words>> = {
  compressionRatio: { name: "compression ratio", places: 2 },
  size: { name: "size of the cylinder", units: { metric: ["cm3", 0], us: ["in3", 1] }, option: "bore" },
  shape: { name: "bore to stroke", places: 2, option: "stroke" },
  bore: { name: "bore", units: size },
  stroke: { name: "stroke", units: size },
  rod: { name: "connecting rod", units: { metric: ["mm", 0], us: ["in", 2] }, option: "rod" },
  intakeCloses: {
    name: "intake closes",
    units: both("deg", 0),
    after: "after bottom",
    option: "intake-closes",
  },
  leak: { name: "leak", units: both("mm2", 2) },
  wall: { name: "cylinder wall", units: warmth },
  start: { name: "air when the intake closes", units: warmth },
  airTemperature: { name: "air", units: warmth },
  heatFactor: { name: "heat lost to the walls" },
  hose: { name: "hose ahead of the valve", units: both("cm3", 1), option: "hose" },
  speed: { name: "cranking speed", units: both("rpm", 0), option: "speed" },
};

export const kindWords: Readonly<Record<EngineKind, string>> = {
  spark: "spark",
  motorcycle: "motorcycle",
  compression: "diesel",
};

/** `a healthy leak`, where none was given. */
export const inputName = ({ name, from }: Pick<ExpectedInput, "name" | "from">): string =>
  name === "leak" && from === "assumed" ? "a healthy leak" : inputWords[name].name;

/** `60 deg after bottom`; empty for a factor. */
export const inputValue = (
  { name, value }: Pick<ExpectedInput, "name" | "value">,
  { typed }: Pick<Known, "typed">,
  system: System,
): string => {
  const { units, places, after } = inputWords[name];
  if (units === undefined) return places === undefined ? "" : short(value, places);
  const told = held(asTold(value, units, system, typedOf(typed, name)));
  return after === undefined ? told : `${told} ${after}`;
};

/** `± 10 deg`, `× or / 1.6`; empty where the value is taken as it stands. */
export const inputDoubt = (
  { name, deviation }: Pick<ExpectedInput, "name" | "deviation">,
  { typed }: Pick<Known, "typed">,
  system: System,
): string => {
  if (deviation === undefined) return "";
  if (deviation.by === "times") return `× or / ${short(deviation.amount, 2)}`;
  const { units, places = 0 } = inputWords[name];
  if (units === undefined) return `± ${short(deviation.amount, places)}`;
  const unit = unitTold(units, system, typedOf(typed, name));
  const amount = differenceIn(unit, deviation.amount);
  return `± ${short(amount, amount < 1 ? 2 : amount < 3 ? 1 : 0)} ${unit}`;
};

/** `the maker's`, `given`, `assumed`. */
export const inputSource = (
  { name, from }: Pick<ExpectedInput, "name" | "from">,
  { sources }: Pick<Known, "sources">,
): string => (name === "speed" && sources.speed === "engine" ? "maker's" : from);
