// What an expected pressure rests on, one thing at a time, and how far each may be off.

import { sweptVolume } from "../cycle/cylinder.ts";
import { assumptions, givenDeviation, healthyLeak, warmth } from "./expected-assumptions.ts";
import {
  type InputName,
  type KnownOfCylinder,
  deviationOfRatio,
  modelInput,
  usualAir,
} from "./model-input.ts";

/** One thing the answer rests on. */
export interface ModelInput {
  readonly name: InputName;
  /** SI; a plain number for ratio, shape and factor; degrees; rpm. */
  readonly value: number;
  readonly from: "given" | "assumed";
  /** One standard deviation; absent where the value is taken as it stands. */
  readonly deviation?: { readonly by: "plus-minus" | "times"; readonly amount: number };
}

type Deviation = NonNullable<ModelInput["deviation"]>;
const plusMinus = (amount: number): Deviation => ({ by: "plus-minus", amount });
const times = (amount: number): Deviation => ({ by: "times", amount });

/** Every input with where it came from and how far it may be off; in the order of the engine. */
export const inputsOf = (known: KnownOfCylinder): readonly ModelInput[] => {
  const usual = assumptions[known.kind];
  const input = modelInput(known);
  const { cylinder } = input;
  const { bore, stroke } = cylinder;
  const entry = (name: InputName, value: number, given: unknown, deviations: Whose): ModelInput => {
    const deviation = given === undefined ? deviations.assumed : deviations.given;
    const from = given === undefined ? "assumed" : "given";
    return { name, value, from, ...(deviation === undefined ? {} : { deviation }) };
  };
  const sizes = [
    ...(known.bore === undefined && known.stroke === undefined
      ? [entry("size", sweptVolume(cylinder), undefined, { assumed: times(usual.size[1]) })]
      : []),
    ...(known.bore === undefined || known.stroke === undefined
      ? [entry("shape", bore / stroke, undefined, { assumed: plusMinus(usual.shape[1]) })]
      : []),
    ...(known.bore === undefined ? [] : [entry("bore", bore, bore, {})]),
    ...(known.stroke === undefined ? [] : [entry("stroke", stroke, stroke, {})]),
  ];
  const ratio = known.compressionRatio;
  const warm = known.engine === "cold" ? {} : { assumed: plusMinus(warmth.wall[1]) };
  return [
    ...sizes,
    entry("rod", cylinder.rod, known.rod, { assumed: plusMinus(usual.rod[1] * stroke) }),
    entry("compressionRatio", ratio, ratio, { given: plusMinus(deviationOfRatio(ratio)) }),
    entry("intakeCloses", input.intakeCloses, known.intakeCloses, {
      assumed: plusMinus(usual.intakeCloses[1]),
      given: plusMinus(givenDeviation.intakeCloses),
    }),
    entry("speed", input.speed, known.speed, {
      assumed: plusMinus(usual.speed[1]),
      given: plusMinus(input.speed * givenDeviation.speed),
    }),
    entry("leak", input.leak, known.leak, { assumed: times(healthyLeak.factor) }),
    entry("hose", input.hose, known.hose, {
      assumed: plusMinus(usual.hose[1]),
      given: plusMinus(givenDeviation.hose),
    }),
    entry("airTemperature", known.airTemperature ?? usualAir, known.airTemperature, {}),
    entry("wall", input.wall, known.wall, warm),
    entry("start", input.start, known.start, {
      assumed: plusMinus(warmth.share[1] * Math.abs(input.wall - (known.airTemperature ?? usualAir))),
    }),
    ...(input.heat === "none"
      ? []
      : [entry("heatFactor", 1, undefined, { assumed: times(warmth.heatFactor) })]),
  ];
};

interface Whose {
  readonly assumed?: Deviation;
  readonly given?: Deviation;
}
