// The dials, the temperatures and the law of flow of `restate` as typed.

import {
  type FlowModel,
  type Gauge,
  type GaugePressure,
  type PressureUnit,
  type Temperature,
  type Warmth,
  classLimit,
  dialUncertainty,
  fromSi,
  gaugePressure,
  isentropicFlow,
  isoFlow,
  temperature,
  usualDivision,
  usualFullScale,
  usualLimit,
  usualSupplyTemperature,
  usualTemperatureHalfWidth,
  warmthOf,
} from "@sealtrend/core";
import type { Args } from "../../command.ts";
import type { TypedValue, Values, Wanted } from "./restate-values.ts";

const classes: Wanted = {
  expected: "the accuracy class in percent of full scale, 0.01 to 20",
  example: "1.6%",
  least: 0.01,
  most: 20,
};
interface DialsAround {
  readonly supply: GaugePressure;
  /** In which assumptions are told. */
  readonly unit: PressureUnit;
  readonly tester?: DialFacts | undefined;
}

type DialFacts = Pick<Gauge, "classPercent" | "fullScale" | "division" | "matched">;

const criticals: Wanted = { expected: "b of ISO 6358, 0 to 0.9", example: "0.5", least: 0, most: 0.9 };

/** Standard uncertainty of a dial, the same for both. @param tester - as the logbook knows it */
export const dialsTyped = (
  args: Args,
  values: Values,
  { supply, unit, tester = {} }: DialsAround,
): { readonly uncertainty: number; readonly assumed: readonly string[] } => {
  const percent = values.number("class", classes) ?? tester.classPercent;
  const scale = pressureOf(values.supply("full-scale")) ?? tester.fullScale;
  const division = pressureOf(values.supply("division")) ?? tester.division;
  const word = args.text("matched");
  const matched = word === undefined ? tester.matched === true : word === "yes";
  if (scale !== undefined && division !== undefined && Number(division) >= Number(scale))
    values.note("--division as large as the scale", "the smallest step of the scale", "--division 1psi");
  if (args.text("full-scale") !== undefined && scale !== undefined && scale < supply)
    values.note("--full-scale below the supply", "a scale that holds the supply", "leave --full-scale out");
  const short = (pressure: GaugePressure): string =>
    `${String(Number(fromSi(pressure, unit).toPrecision(2)))} ${unit}`;
  const limit = percent === undefined ? {} : { limit: classLimit(percent, scale ?? usualFullScale(supply)) };
  return {
    uncertainty: dialUncertainty({ ...limit, ...(division === undefined ? {} : { division }), matched }),
    assumed: [
      ...(percent === undefined ? [`dials ± ${short(usualLimit)}`] : []),
      ...(percent !== undefined && scale === undefined ? [`dials to ${short(usualFullScale(supply))}`] : []),
      ...(division === undefined ? [`divided in ${short(usualDivision)}`] : []),
    ],
  };
};

const pressureOf = (typed: TypedValue | undefined): GaugePressure | undefined =>
  typed === undefined ? undefined : gaugePressure(typed.si);

/** Warmth is absent where the cylinder is not said to be warm, the supply air where it is not told. */
export const temperaturesTyped = (
  values: Values,
): {
  readonly warmth?: Warmth;
  readonly supplyTemperature?: Temperature;
  readonly assumed: readonly string[];
} => {
  const cylinder = values.temperature("cylinder-temp");
  const air = values.temperature("air");
  const supply = air === undefined ? usualSupplyTemperature : temperature(air.si);
  const told = air === undefined ? {} : { supplyTemperature: supply };
  if (cylinder === undefined) return { ...told, assumed: ["the cylinder as cool as the supply air"] };
  return {
    ...told,
    warmth: warmthOf(temperature(cylinder.si), supply, usualTemperatureHalfWidth),
    assumed: [
      `the cylinder's temperature ± ${String(usualTemperatureHalfWidth)} C`,
      ...(air === undefined ? ["supply air of 20 C"] : []),
    ],
  };
};

export const modelTyped = (args: Args, values: Values): FlowModel => {
  const b = values.number("critical-ratio", criticals);
  if (args.text("model") === "iso6358") return isoFlow(b);
  if (args.text("critical-ratio") !== undefined)
    values.note("--critical-ratio without ISO 6358", "the model that has one", "add --model iso6358");
  return isentropicFlow;
};
