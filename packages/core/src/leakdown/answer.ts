// Everything that can be said of one typed reading: its leak, and what another tester would show.

import { type LeakReading, cylinderOfLost } from "./alpha.ts";
import { answerByHoles } from "./answer-by-holes.ts";
import { isentropicFlow } from "./flow-model.ts";
import { type LeakJudgement, judgeLeak } from "./judge.ts";
import { leakFigures } from "./leak.ts";
import type { LeakAnswer, LeakQuestion } from "./leak-question.ts";
import { type RestateRefusal, isUnchanged, restate } from "./restate.ts";
import { alphaOverSupplies } from "./unknown-supply.ts";

/** Everything that can be said of one typed leak-down reading: its leak, and what another tester would show.
 *  @throws RangeError where a supply is not above 0, the part lost is outside 0 … 1 or the doubt of the dials is below 0 */
export const answerLeak = (question: LeakQuestion): LeakAnswer => {
  const { restrictor, other, knownHoles, model = isentropicFlow } = question;
  check(question);
  const reading = readingTyped(question);
  if (restrictor.bore === undefined && knownHoles !== undefined)
    return answerByHoles({ ...question, knownHoles, model }, reading);
  if (reading === undefined) return withoutSupply(question);
  const { supply, cylinder } = reading;
  const readable = cylinder > 0 && cylinder <= supply;
  const judgement = judgeLeak(reading, restrictor, model);
  const { restated, refused = refusedAlone(judgement) } =
    other === undefined ? {} : restate({ reading, restrictor }, other, model);
  return {
    lost: (supply - cylinder) / supply,
    reading,
    judgement,
    ...(readable ? { figures: leakFigures(reading, restrictor, model) } : {}),
    ...(restated === undefined ? {} : { restated }),
    ...(other !== undefined && isUnchanged(reading, other) ? { unchanged: "same-tester" } : {}),
    ...(refused === undefined ? {} : { refused }),
  };
};

const check = ({ typed, uDial }: LeakQuestion): void => {
  if (typed.kind === "lost" && !(typed.lost >= 0 && typed.lost <= 1))
    throw new RangeError(`answerLeak: the part lost must be within 0 … 1, got ${String(typed.lost)}`);
  if (!(uDial >= 0))
    throw new RangeError(`answerLeak: the doubt of the dials must be at least 0 Pa, got ${String(uDial)}`);
};

/** Where nothing is to be restated, dials that disagree still leave nothing to tell. */
const refusedAlone = ({ kind }: LeakJudgement): RestateRefusal | undefined =>
  kind === "disagree" ? "gauges-disagree" : undefined;

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
