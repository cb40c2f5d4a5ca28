// The options of `expect`: each a fact of the engine, the day or the model, and how its typed value is read.

import {
  type Dimension,
  type StatedNumbers,
  type UnitName,
  conditionCell,
  readNumber,
  readQuantity,
  statedFault,
  unitsOf,
  withConditionColumns,
} from "@sealtrend/core/parts";
import type { Args, Fault, Option } from "../../command.ts";
import { grouped } from "../grouped.ts";
import { wordsOfField } from "../engine-options.ts";
import { usageFault } from "../usage.ts";

const engine = "The engine";
const test = "The test";
const model = "The model, where you know better";

export const expectOptions: readonly Option[] = [
  grouped(engine, "compression-ratio", "10", "from the manual; 10:1 is understood"),
  grouped(engine, "bore", "86mm", "cylinder bore"),
  grouped(engine, "stroke", "86mm", "piston stroke"),
  grouped(engine, "rod", "143mm", "connecting rod, centre to centre"),
  grouped(engine, "intake-closes", "60deg", "crank degrees after bottom dead centre, at the seat"),
  {
    ...grouped(engine, "ignition", "spark", "how it fires (diesel, petrol and gas are understood)"),
    alias: "kind",
    ...wordsOfField("ignition"),
  },
  {
    ...grouped(
      engine,
      "use",
      "farm",
      "what it drives (a motorcycle is taken to have a shorter stroke and to crank faster)",
    ),
    ...wordsOfField("use"),
  },
  grouped(test, "speed", "250rpm", "cranking speed"),
  grouped(test, "altitude", "0m", "height of the place"),
  grouped(test, "station-pressure", "965hPa", "barometer at the place itself"),
  grouped(test, "qnh", "1016hPa", "sea-level pressure of the weather report, with --altitude"),
  grouped(test, "air", "22C", "air temperature"),
  { ...grouped(test, "engine-temp", "warm", "how warm the engine is"), choices: ["warm", "cold"] },
  grouped(test, "hose", "1cm3", "volume of hose and adapter ahead of the gauge's check valve"),
  grouped(model, "leak-area", "1mm2", "effective area of all leaks of the cylinder"),
  grouped(model, "wall", "360K", "temperature of the cylinder's walls"),
  grouped(model, "start", "320K", "temperature of the charge when the intake closes"),
  {
    ...grouped(model, "heat", "hohenberg", "how heat goes to the walls"),
    choices: ["hohenberg", "annand", "woschni", "none"],
  },
  {
    ...grouped(model, "gamma", "variable", "ratio of specific heats"),
    words: ["variable"],
    orElse: "a number such as 1.4",
  },
];

interface Kind {
  readonly dimension: Dimension;
  /** The unit of a bare number, where only one is in use. */
  readonly assumed?: UnitName;
  /** Units that a bare number is tried in, the likeliest first; of those without, a test has the same option. */
  readonly tried?: readonly UnitName[];
  /** What of the model it is. */
  readonly field?: keyof StatedNumbers;
  /** A bare number below this is in the next unit that fits: 3.4 is no bore in millimetres [SI]. */
  readonly least?: number;
}

const size = { dimension: "length", tried: ["mm", "in", "m"], least: 0.01 } as const;
const warmth = { dimension: "temperature", tried: ["K", "C", "F"] } as const;

const quantities = {
  bore: { ...size, field: "bore" },
  stroke: { ...size, field: "stroke" },
  rod: { ...size, field: "rod" },
  "intake-closes": { dimension: "angle", assumed: "deg", tried: ["deg"], field: "intakeCloses" },
  speed: { dimension: "speed", assumed: "rpm", tried: ["rpm"], field: "speed" },
  hose: { dimension: "volume", tried: ["cm3"], field: "hose" },
  "leak-area": { dimension: "area", tried: ["mm2"], field: "leak" },
  wall: { ...warmth, field: "wall" },
  start: { ...warmth, field: "start" },
  altitude: { dimension: "length" },
  "station-pressure": { dimension: "pressure" },
  qnh: { dimension: "pressure" },
  air: { dimension: "temperature" },
} as const satisfies Readonly<Record<string, Kind>>;

export type QuantityOption = keyof typeof quantities;

/** A quantity and how it was typed. */
export interface TypedQuantity {
  readonly si: number;
  /** The number that stands before the unit. */
  readonly value: number;
  readonly unit: UnitName;
  readonly text: string;
}

/** By the name of the option. */
export type Typed = Readonly<Partial<Record<QuantityOption, TypedQuantity>>>;

/** What was typed as quantities, and every value that is none. */
export const quantitiesTyped = (args: Args): { readonly typed: Typed; readonly faults: readonly Fault[] } => {
  const faults: Fault[] = [];
  const typed: Partial<Record<QuantityOption, TypedQuantity>> = {};
  for (const name of Object.keys(quantities) as QuantityOption[]) {
    const text = args.text(name);
    if (text === undefined) continue;
    const { dimension, assumed, tried }: Kind = quantities[name];
    const reading = readQuantity(text, dimension, assumed);
    if (reading.ok) {
      const { si, value, unit } = reading;
      typed[name] = { si, value, unit, text: text.trim() };
    }
    if (tried === undefined) faults.push(...conditionFault(name, text));
    else if (!reading.ok) {
      const expected = `a number with its unit (${unitsOf(dimension).join(", ")})`;
      const bare = reading.fault === "unit-missing" ? inUnitThatFits(name, text.trim()) : undefined;
      const mend = `--${name} ${bare ?? exampleOf(name)}`;
      faults.push(usageFault("quantity-bad", `--${name} "${text}"`, expected, mend));
    }
  }
  return { typed, faults };
};

/** A bare number of an option with the first unit in which it can be; undefined where there is none. */
export const inUnitThatFits = (name: QuantityOption, number: string): string | undefined => {
  const { dimension, tried = [], field, least = -Infinity }: Kind = quantities[name];
  return tried
    .map((unit) => number + unit)
    .find((text) => {
      const reading = readQuantity(text, dimension);
      if (!reading.ok || field === undefined || reading.si < least) return false;
      return statedFault({ [field]: reading.si }) === undefined;
    });
};

export const isQuantityOption = (name: string): name is QuantityOption => Object.hasOwn(quantities, name);

const conditionFault = (name: string, text: string): readonly Fault[] => {
  const cell = conditionCell(name, text, withConditionColumns([]));
  return cell.ok ? [] : [usageFault("condition-bad", cell.found, cell.expected, cell.mend)];
};

/** What stands for the value of an option in the help, which can be typed. */
export const exampleOf = (name: string): string =>
  expectOptions.find((option) => option.name === name)?.value ?? "";

/** A plain number: `10`, `10:1`, `1.4`. @returns undefined where the option is not given; a fault where it is no number */
export const plainTyped = (args: Args, name: string, expected: string): number | Fault | undefined => {
  const text = args.text(name);
  if (text === undefined) return undefined;
  const reading = readNumber(text.trim().replace(/\s*:\s*1$/, ""));
  return reading.ok && reading.thousands?.mark !== ","
    ? reading.value
    : usageFault("number-bad", `--${name} "${text}"`, expected, `--${name} ${exampleOf(name)}`);
};
