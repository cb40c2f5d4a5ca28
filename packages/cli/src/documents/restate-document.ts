// The JSON of `restate`: sealtrend/restate@1. The top level holds the leak, and the reading on the other tester.

import type { LeakAnswer, LeakLimit, LeakQuestion, LeakSize } from "@sealtrend/core";
import { refusalWords } from "../render/restate/restate-words.ts";
import { kPa } from "../render/units.ts";

const perMetre = 1e3;
const perSquareMetre = 1e6;
/** m3/s to L/min. */
const perMinute = 6e4;

/** What is undefined is left out when the document is written. */
export const restateDocument = (answer: LeakAnswer, question: LeakQuestion, assumed: readonly string[]) => {
  const { figures, restated, refused, judgement, reading, alphaSpan, holeSpan } = answer;
  const { bore } = question.restrictor;
  return {
    schema: "sealtrend/restate@1",
    alpha: figures?.alpha,
    u_alpha: figures?.uAlpha,
    ...sizeDocument(figures?.size),
    read_kPa: restated === undefined ? undefined : kPa(restated.reading.cylinder),
    lost: restated?.reading.lost,
    lowLost: restated === undefined ? undefined : Math.min(restated.reading.lost, restated.laminarLost),
    highLost: restated === undefined ? undefined : Math.max(restated.reading.lost, restated.laminarLost),
    u_lost: restated?.uLost,
    chokedRestrictor: figures?.chokedRestrictor,
    chokedLeak: figures?.chokedLeak,
    model: question.model?.name,
    from: {
      regulated_kPa: reading === undefined ? undefined : kPa(reading.supply),
      read_kPa: reading === undefined ? undefined : kPa(reading.cylinder),
      lost: answer.lost,
      u_lost: figures?.uLost,
      restrictor_mm: bore === undefined ? undefined : bore * perMetre,
      ambient_kPaAbs: kPa(question.ambient),
      judgement: judgement?.kind,
      atMost: judgement?.kind === "tight" ? limitDocument(judgement.limit) : undefined,
    },
    alphaLow: alphaSpan?.low,
    alphaHigh: alphaSpan?.high,
    equalHoleLow_mm: holeSpan === undefined ? undefined : holeSpan.low * perMetre,
    equalHoleHigh_mm: holeSpan === undefined ? undefined : holeSpan.high * perMetre,
    refused:
      refused === undefined ? undefined : { code: refused, text: refusalWords(refused, answer).reason },
    assumed,
  };
};

const sizeDocument = (size: LeakSize | undefined) =>
  size === undefined
    ? {}
    : {
        equalHole_mm: size.equalHole * perMetre,
        u_equalHole_mm: size.uEqualHole * perMetre,
        area_mm2: size.area * perSquareMetre,
        u_area_mm2: size.uArea * perSquareMetre,
        cd: size.cd,
        flow_Lmin: size.flow * perMinute,
      };

const limitDocument = ({ alpha, equalHole, area }: LeakLimit) => ({
  alpha,
  equalHole_mm: equalHole === undefined ? undefined : equalHole * perMetre,
  area_mm2: area === undefined ? undefined : area * perSquareMetre,
});
