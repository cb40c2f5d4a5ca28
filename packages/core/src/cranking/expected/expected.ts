// What a healthy cylinder of an engine should read, from whatever is known of it. What is not known is assumed, and each
// assumption is varied to say how far the answer can be trusted; so far that it can condemn no cylinder.

import { type GaugePressure, type Volume, gaugePressure } from "../../quantity/index.ts";
import type { CycleInput } from "../cycle/cycle-rates.ts";
import { type Cycle, crankingCycle } from "../cycle/cycle.ts";
import { clearanceVolume, sweptVolume, trappedRatio } from "../cycle/cylinder.ts";
import { assumptions } from "./expected-assumptions.ts";
import { type ModelInput, inputsOf } from "./expected-inputs.ts";
import { requireKnown } from "./expected-limits.ts";
import { type InputName, type KnownOfCylinder, modelInput } from "./model-input.ts";

/** One size or condition that the expected reading went by: given or assumed, and what its doubt does to the answer. */
export interface ExpectedInput extends ModelInput {
  /** ½ ln(P₊/P₋): what one standard deviation up does to the reading, as a share of it; 0 where there is none. */
  readonly effect: number;
}

/** What a healthy cylinder of such an engine should read [Pa above the air around it], with the band that holds about
 *  19 of 20. */
export interface ExpectedPressure {
  readonly expected: GaugePressure;
  /** Standard uncertainty of its logarithm. */
  readonly uncertainty: number;
  /** expected · e^(∓2u): about 19 healthy cylinders in 20 of such engines lie between. */
  readonly low: GaugePressure;
  readonly high: GaugePressure;
  readonly clearance: Volume;
  readonly swept: Volume;
  /** Without the hose, and with it. */
  readonly trappedRatio: number;
  readonly trappedRatioWithHose: number;
  readonly model: CycleInput;
  readonly cycle: Cycle;
  readonly inputs: readonly ExpectedInput[];
  /** Standard uncertainty of ln P that the model itself adds. */
  readonly modelUncertainty: number;
  readonly standing: BandStanding;
}

/** `no-pressure`: what is left of it stands below the first marks of any compression gauge. `too-wide`: the upper end of the
 *  band is more than four times the lower, so that no reading could be told from another. */
export type BandStanding = "usable" | "too-wide" | "no-pressure";

/** Gauge pressure below which there is nothing to read [Pa]. Judgement: 50 kPa is half a division of usual dials. */
export const leastOnADial = gaugePressure(50e3);
/** Upper end of the band over the lower. Judgement. */
const widestBand = 4;

const standingOf = (reading: number, uncertainty: number): BandStanding => {
  if (reading < leastOnADial) return "no-pressure";
  return Math.exp(4 * uncertainty) > widestBand ? "too-wide" : "usable";
};

/** The reading to expect of a healthy cylinder, with a band that holds about 19 in 20 of them.
 *  Each unknown goes one standard deviation up and one down: u² = Σ(½ ln(P₊/P₋))² + u_model².
 *  @throws RangeError for what `expectedFault` finds  @source crankingCycle; assumptions from memory and judgement, five
 *  petrol engines' printed figures lie within 10 % of it  @checked tests/published/cranking-model.test.ts (computed) */
export const expectedPressure = (known: KnownOfCylinder): ExpectedPressure => {
  requireKnown("expectedPressure", known);
  const model = modelInput(known);
  const cycle = crankingCycle(model);
  const { cylinder, intakeCloses, hose } = model;
  const inputs = inputsOf(known).map((input) => ({ ...input, effect: effectOf(known, input) }));
  const modelUncertainty = assumptions[known.kind].model;
  const uncertainty = Math.hypot(modelUncertainty, ...inputs.map(({ effect }) => effect));
  return {
    expected: cycle.reading,
    uncertainty,
    low: gaugePressure(cycle.reading * Math.exp(-2 * uncertainty)),
    high: gaugePressure(cycle.reading * Math.exp(2 * uncertainty)),
    clearance: clearanceVolume(cylinder),
    swept: sweptVolume(cylinder),
    trappedRatio: trappedRatio(cylinder, intakeCloses),
    trappedRatioWithHose: trappedRatio(cylinder, intakeCloses, hose),
    model,
    cycle,
    inputs,
    modelUncertainty,
    standing: standingOf(cycle.reading, uncertainty),
  };
};

/** Below this a reading is none, and its logarithm means nothing [Pa]. */
const leastReading = 1;

const effectOf = (known: KnownOfCylinder, { name, deviation }: ModelInput): number => {
  if (deviation === undefined) return 0;
  const lnAt = (moved: Partial<Record<InputName, number>>): number =>
    Math.log(Math.max(leastReading, crankingCycle(modelInput(known, moved)).reading));
  return (lnAt({ [name]: 1 }) - lnAt({ [name]: -1 })) / 2;
};
