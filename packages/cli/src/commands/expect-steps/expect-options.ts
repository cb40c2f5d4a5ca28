// The options of `expect`: each a fact of the engine, the day or the model, and how its typed value is read.

import {
  type Dimension,
  type UnitName,
  conditionCell,
  readNumber,
  readQuantity,
  unitsOf,
  withConditionColumns,
} from "@sealtrend/core";
import type { Args, Fault, Option } from "../../command.ts";
import { wordsOfField } from "../engine-options.ts";
import { usageFault } from "../usage.ts";

const engine = "The engine";
const test = "The test";
const model = "The model, where you know better";

const given = (group: string, name: string, value: string, help: string): Option => ({
  group,
  name,
  value,
  help,
});

export const expectOptions: readonly Option[] = [
  given(engine, "compression-ratio", "10", "from the manual; 10:1 is understood"),
  given(engine, "bore", "86mm", "cylinder bore"),
  given(engine, "stroke", "86mm", "piston stroke"),
  given(engine, "rod", "143mm", "connecting rod, centre to centre"),
  given(engine, "intake-closes", "60deg", "crank degrees after bottom dead centre, at the seat"),
  {
    ...given(engine, "ignition", "spark", "how it fires (diesel, petrol and gas are understood)"),
    alias: "kind",
    ...wordsOfField("ignition"),
  },
  { ...given(engine, "use", "farm", "what it drives; a motorcycle differs"), ...wordsOfField("use") },
  given(test, "speed", "250rpm", "cranking speed"),
  given(test, "altitude", "0m", "height of the place"),
  given(test, "station-pressure", "965hPa", "barometer at the place itself"),
  given(test, "qnh", "1016hPa", "sea-level pressure of the weather report, with --altitude"),
  given(test, "air", "22C", "air temperature"),
  { ...given(test, "engine-temp", "warm", "how warm the engine is"), choices: ["warm", "cold"] },
  given(test, "hose", "1cm3", "what of hose and adapter lies ahead of the gauge's check valve"),
  given(model, "leak-area", "1mm2", "effective area of all leaks of the cylinder"),
  given(model, "wall", "360K", "temperature of the cylinder's walls"),
  given(model, "start", "320K", "temperature of the charge when the intake closes"),
  {
    ...given(model, "heat", "hohenberg", "how heat goes to the walls"),
    choices: ["hohenberg", "annand", "woschni", "none"],
  },
  given(model, "gamma", "variable", "ratio of specific heats: variable, or a number such as 1.4"),
];

interface Kind {
  readonly dimension: Dimension;
  /** The unit of a bare number, where only one is in use. */
  readonly assumed?: UnitName;
}

const quantities = {
  bore: { dimension: "length" },
  stroke: { dimension: "length" },
  rod: { dimension: "length" },
  "intake-closes": { dimension: "angle", assumed: "deg" },
  speed: { dimension: "speed", assumed: "rpm" },
  hose: { dimension: "volume" },
  "leak-area": { dimension: "area" },
  wall: { dimension: "temperature" },
  start: { dimension: "temperature" },
  altitude: { dimension: "length" },
  "station-pressure": { dimension: "pressure" },
  qnh: { dimension: "pressure" },
  air: { dimension: "temperature" },
} as const satisfies Readonly<Record<string, Kind>>;

/** Options that a test has too, with the range they have there. */
const conditions: readonly string[] = ["altitude", "station-pressure", "qnh", "air"];

export type QuantityOption = keyof typeof quantities;
/** SI, by the name of the option; and the unit it was typed in. */
export type Typed = Readonly<
  Partial<Record<QuantityOption, { readonly si: number; readonly unit: UnitName }>>
>;

/** What was typed as quantities, and every value that is none. */
export const quantitiesTyped = (args: Args): { readonly typed: Typed; readonly faults: readonly Fault[] } => {
  const faults: Fault[] = [];
  const typed: Partial<Record<QuantityOption, { si: number; unit: UnitName }>> = {};
  for (const name of Object.keys(quantities) as QuantityOption[]) {
    const text = args.text(name);
    if (text === undefined) continue;
    const { dimension, assumed }: Kind = quantities[name];
    const reading = readQuantity(text, dimension, assumed);
    if (reading.ok) {
      typed[name] = { si: reading.si, unit: reading.unit };
      if (conditions.includes(name)) faults.push(...conditionFault(name, text));
      continue;
    }
    const example = exampleOf(name);
    const bare = reading.fault === "unit-missing" ? text.trim() + example.replace(/^[\d.]+/, "") : example;
    const expected = `a number with its unit (${unitsOf(dimension).join(", ")})`;
    faults.push(usageFault("quantity-bad", `--${name} "${text}"`, expected, `--${name} ${bare}`));
  }
  return { typed, faults };
};

const conditionFault = (name: string, text: string): readonly Fault[] => {
  const cell = conditionCell(name, text, withConditionColumns([]));
  return cell.ok ? [] : [usageFault("condition-bad", cell.found, cell.expected, cell.mend)];
};

/** What stands for the value of an option in the help, which can be typed. */
export const exampleOf = (name: string): string =>
  expectOptions.find((option) => option.name === name)?.value ?? "";

/** A plain number: `10`, `10:1`, `1.4`. @returns undefined where the option is not given; a fault where it is no number */
export const plainTyped = (args: Args, name: string): number | Fault | undefined => {
  const text = args.text(name);
  if (text === undefined) return undefined;
  const reading = readNumber(text.trim().replace(/\s*:\s*1$/, ""));
  return reading.ok && reading.thousands?.mark !== ","
    ? reading.value
    : usageFault("number-bad", `--${name} "${text}"`, "a number", `--${name} ${exampleOf(name)}`);
};
