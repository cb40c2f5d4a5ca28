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
} from "@sealtrend/core/parts";
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

/** A division above this part of the scale or the supply is a slip; judgement. */
const coarsest = 0.2;

interface Dials {
  /** Standard uncertainty [Pa]. */
  readonly uncertainty: number;
  readonly assumed: readonly string[];
  /** Said beside the answer. */
  readonly aside: readonly string[];
}

/** Standard uncertainty of a dial, the same for both. @param tester - as the logbook knows it */
export const dialsTyped = (args: Args, values: Values, { supply, unit, tester = {} }: DialsAround): Dials => {
  const short = (pressure: number, digits = 2): string =>
    `${String(Number(fromSi(pressure, unit).toPrecision(digits)))} ${unit}`;
  const percent = values.number("class", classes) ?? tester.classPercent;
  const scale = pressureOf(values.supply("full-scale", "100psi")) ?? tester.fullScale;
  const division = pressureOf(values.supply("division", "1psi")) ?? tester.division;
  const word = args.text("matched");
  const matched = word === undefined ? tester.matched === true : word === "yes";
  const most = coarsest * Math.min(supply, scale ?? supply);
  if (division !== undefined && division > most * (1 + 1e-9))
    values.note(
      args.text("division") === undefined
        ? `a division of ${short(division)} in the logbook`
        : `--division "${args.text("division") ?? ""}"`,
      "the smallest step of the scale, at most a fifth of the supply and of full scale",
      `--division ${short(coarsest * most).replace(" ", "")}`,
    );
  if (args.text("full-scale") !== undefined && scale !== undefined && scale < supply)
    values.note("--full-scale below the supply", "a scale that holds the supply", "leave --full-scale out");
  const limit = percent === undefined ? {} : { limit: classLimit(percent, scale ?? usualFullScale(supply)) };
  return {
    uncertainty: dialUncertainty({ ...limit, ...(division === undefined ? {} : { division }), matched }),
    assumed: [
      ...(percent === undefined ? [`dials within ${short(usualLimit)}`] : []),
      ...(percent !== undefined && scale === undefined
        ? [`dials to ${short(usualFullScale(supply), 4)}`]
        : []),
      ...(division === undefined ? [`divided in ${short(usualDivision)}`] : []),
    ],
    aside:
      args.text("full-scale") !== undefined && percent === undefined
        ? [
            `--full-scale counts with --class only: without it each dial is taken to be within ${short(usualLimit)}`,
          ]
        : [],
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
  const cylinder = values.temperature("cylinder-temp", "80C");
  const air = values.temperature("air", "22C");
  const supply = air === undefined ? usualSupplyTemperature : temperature(air.si);
  const told = air === undefined ? {} : { supplyTemperature: supply };
  if (cylinder === undefined) return { ...told, assumed: ["the cylinder as cool as the supply air"] };
  return {
    ...told,
    warmth: warmthOf(temperature(cylinder.si), supply, usualTemperatureHalfWidth),
    assumed: [
      `the cylinder's temperature within ${String(usualTemperatureHalfWidth)} C`,
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
