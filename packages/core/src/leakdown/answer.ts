// Everything that can be said of one typed reading: its leak, and what another tester would show.

import type { AbsolutePressure, GaugePressure, Temperature } from "../quantity/index.ts";
import { type LeakReading, cylinderOfLost } from "./alpha.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { type LeakJudgement, judgeLeak } from "./judge.ts";
import { type LeakFigures, leakFigures } from "./leak.ts";
import { type OtherTester, type RestateRefusal, type Restated, restate } from "./restate.ts";
import type { Restrictor } from "./restrictor.ts";
import { type Span, alphaOverSupplies } from "./unknown-supply.ts";
import type { Warmth } from "./warmth.ts";

/** A pressure needs the supply it came from; a percent dial may be all there is. */
export type Typed =
  | { readonly kind: "pressure"; readonly cylinder: GaugePressure; readonly supply: GaugePressure }
  | { readonly kind: "lost"; readonly lost: number; readonly supply?: GaugePressure };

export interface LeakQuestion {
  readonly typed: Typed;
  readonly restrictor: Restrictor;
  readonly ambient: AbsolutePressure;
  /** Standard uncertainty of each of the two dials [Pa]. */
  readonly uDial: number;
  readonly warmth?: Warmth;
  /** Absent: 20 °C. */
  readonly supplyTemperature?: Temperature;
  /** Absent: nothing is to be restated. */
  readonly other?: OtherTester;
  readonly model?: FlowModel;
}

export interface LeakAnswer {
  /** Fraction lost as read; negative where the dials disagree. */
  readonly lost: number;
  /** Absent where the supply is not known. */
  readonly reading?: LeakReading;
  readonly judgement?: LeakJudgement;
  /** By the flow model, also where the dials do not carry them; absent at no pressure and where the supply is not known. */
  readonly figures?: LeakFigures;
  /** Where the supply is not known: alpha over those in use. */
  readonly alphaSpan?: Span;
  /** And the equal hole [m], where the bore is known. */
  readonly holeSpan?: Span;
  readonly restated?: Restated;
  readonly refused?: RestateRefusal;
}

/** @throws RangeError where a supply is not above 0 or the part lost is outside 0 … 1 */
export const answerLeak = (question: LeakQuestion): LeakAnswer => {
  const { typed, restrictor, other, model = isentropicFlow } = question;
  const reading = readingTyped(question);
  if (reading === undefined) return withoutSupply(question);
  const { supply, cylinder } = reading;
  const readable = cylinder > 0 && cylinder <= supply;
  const told = other === undefined ? {} : restate({ reading, restrictor }, other, model);
  const alone = other !== undefined && typed.kind === "lost" && restrictor.bore === undefined;
  return {
    lost: (supply - cylinder) / supply,
    reading,
    judgement: judgeLeak(reading, restrictor, model),
    ...(readable ? { figures: leakFigures(reading, restrictor, model) } : {}),
    ...told,
    ...(alone ? { refused: told.refused ?? "restrictor-unknown" } : {}),
  };
};

const readingTyped = (question: LeakQuestion): LeakReading | undefined => {
  const { typed, ambient, uDial, warmth, supplyTemperature } = question;
  const { supply } = typed;
  if (supply === undefined) return undefined;
  const cylinder = typed.kind === "pressure" ? typed.cylinder : cylinderOfLost(supply, typed.lost);
  return {
    supply,
    cylinder,
    ambient,
    uSupply: uDial,
    uCylinder: uDial,
    ...(warmth === undefined ? {} : { warmth }),
    ...(supplyTemperature === undefined ? {} : { supplyTemperature }),
  };
};

const withoutSupply = (question: LeakQuestion): LeakAnswer => {
  const { typed, other } = question;
  const lost = typed.kind === "lost" ? typed.lost : 0;
  return {
    lost,
    ...(lost > 0 && lost < 1 ? spansOf(lost, question) : {}),
    ...(other === undefined ? {} : { refused: "supply-unknown" }),
  };
};

const spansOf = (lost: number, { restrictor: { bore }, ambient, model }: LeakQuestion) => {
  const alphaSpan = alphaOverSupplies(lost, ambient, model);
  if (bore === undefined) return { alphaSpan };
  return {
    alphaSpan,
    holeSpan: { low: bore * Math.sqrt(alphaSpan.low), high: bore * Math.sqrt(alphaSpan.high) },
  };
};
