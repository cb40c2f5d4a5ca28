// What the cranking speed did to the readings, as JSON.

import type { PressureValue, SpeedAssessment } from "@sealtrend/core";
import { kPa } from "../render/units.ts";

/** Absent where no dry reading compares; a refusal stands beside whatever is known. */
export const speedDocument = (speed: SpeedAssessment | undefined) => {
  if (speed === undefined) return undefined;
  const { from, to, lossFree, calibration, refused } = speed;
  return {
    from_rpm: from,
    to_rpm: to,
    P0_kPa: lossFree === undefined ? undefined : kPa(lossFree.pressure),
    u_lnP0: lossFree?.uncertainty,
    source: lossFree?.sources.join(" and "),
    calibration,
    refused: refused === undefined ? undefined : { code: refused.code, text: refused.text },
  };
};

/** In reference air and, where that was not refused, at the reference speed; then in reference air alone as well. */
export const correctedDocument = ({ corrected, uncertainty, full }: PressureValue) => {
  const inAir = uncertainty === undefined ? undefined : kPa(uncertainty);
  return full === undefined
    ? { corrected_kPa: kPa(corrected), u_corrected_kPa: inAir }
    : {
        corrected_kPa: kPa(full.corrected),
        u_corrected_kPa: kPa(full.uncertainty),
        atReadSpeed_kPa: kPa(corrected),
        u_atReadSpeed_kPa: inAir,
        lossSpeed_rpm: full.lossSpeed,
      };
};
