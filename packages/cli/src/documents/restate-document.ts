// The JSON of `restate`: sealtrend/restate@1. The top level holds the leak, and the reading on the other tester.

import {
  type HoleOfReading,
  type LeakLimit,
  type LeakSize,
  type PressureUnit,
  lostUncertainty,
} from "@sealtrend/core/parts";
import type { RestateShown } from "../render/restate/restate-shown.ts";
import { refusalWords } from "../render/restate/restate-words.ts";
import { kPa } from "../render/units.ts";

const perMetre = 1e3;
const perSquareMetre = 1e6;
/** m3/s to L/min. */
const perMinute = 6e4;

/** What is undefined is left out when the document is written. A doubt to both sides stands beside a measured leak only.
 *  @param unit - of the words of a refusal */
export const restateDocument = (shown: RestateShown, unit: PressureUnit) => {
  const { answer, question, assumed, logbook } = shown;
  const { figures, restated, refused, judgement, reading, alphaSpan, holeSpan, byHoles } = answer;
  const { bore } = question.restrictor;
  const { typed } = question;
  const cylinder = reading?.cylinder ?? (typed.kind === "pressure" ? typed.cylinder : undefined);
  const isMeasured = judgement?.kind === "measured" || byHoles?.kind === "measured";
  return {
    schema: "sealtrend/restate@1",
    alpha: figures?.alpha,
    u_alpha: isMeasured ? figures?.uAlpha : undefined,
    ...sizeDocument(figures?.size, isMeasured ? "both-sides" : "one-sided"),
    ...holeDocument(byHoles),
    read_kPa: restated === undefined ? undefined : kPa(restated.reading.cylinder),
    lost: restated?.reading.lost,
    lowLost: restated === undefined ? undefined : Math.min(restated.reading.lost, restated.laminarLost),
    highLost: restated === undefined ? undefined : Math.max(restated.reading.lost, restated.laminarLost),
    u_lost: isMeasured ? restated?.uLost : undefined,
    unchanged: answer.unchanged,
    chokedRestrictor: figures?.chokedRestrictor,
    chokedLeak: figures?.chokedLeak,
    model: question.model?.name,
    from: {
      regulated_kPa: reading === undefined ? undefined : kPa(reading.supply),
      read_kPa: cylinder === undefined ? undefined : kPa(cylinder),
      lost: answer.lost,
      u_lost: reading === undefined ? undefined : lostUncertainty(reading),
      u_dial_kPa: kPa(question.uDial),
      restrictor_mm: bore === undefined ? undefined : bore * perMetre,
      ambient_kPaAbs: kPa(question.ambient),
      judgement: judgement?.kind,
      byHoles: byHoles?.kind,
      atMost: judgement?.kind === "tight" ? limitDocument(judgement.limit) : undefined,
    },
    alphaLow: alphaSpan?.low,
    alphaHigh: alphaSpan?.high,
    equalHoleLow_mm: holeSpan === undefined ? undefined : holeSpan.low * perMetre,
    equalHoleHigh_mm: holeSpan === undefined ? undefined : holeSpan.high * perMetre,
    refused:
      refused === undefined ? undefined : { code: refused, text: refusalWords(refused, shown, unit).reason },
    logbook: logbook.length === 0 ? undefined : logbook,
    assumed,
  };
};

const sizeDocument = (size: LeakSize | undefined, doubt: "both-sides" | "one-sided") =>
  size === undefined
    ? {}
    : {
        equalHole_mm: size.equalHole * perMetre,
        u_equalHole_mm: doubt === "one-sided" ? undefined : size.uEqualHole * perMetre,
        area_mm2: size.area * perSquareMetre,
        u_area_mm2: doubt === "one-sided" ? undefined : size.uArea * perSquareMetre,
        cd: size.cd,
        flow_Lmin: size.flow * perMinute,
      };

/** By open holes of known size. */
const holeDocument = (found: HoleOfReading | undefined) =>
  found?.kind === "measured"
    ? { equalHole_mm: found.hole * perMetre, u_equalHole_mm: found.uHole * perMetre }
    : {};

const limitDocument = ({ alpha, equalHole, area }: LeakLimit) => ({
  alpha,
  equalHole_mm: equalHole === undefined ? undefined : equalHole * perMetre,
  area_mm2: area === undefined ? undefined : area * perSquareMetre,
});
