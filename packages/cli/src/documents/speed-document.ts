// What the cranking speed did to the readings, as JSON.

import type { PressureValue, SpeedAssessment } from "@sealtrend/core/parts";
import { kPa } from "../render/units.ts";

/** Absent where no dry reading compares; a refusal stands beside whatever is known. */
export const speedDocument = (speed: SpeedAssessment | undefined) => {
  if (speed === undefined) return undefined;
  const { from, to, least, most, uneven, lossFree, calibration, refused } = speed;
  return {
    from_rpm: from,
    to_rpm: to,
    least_rpm: uneven === undefined ? undefined : least,
    most_rpm: uneven === undefined ? undefined : most,
    compared_rpm: uneven?.refused === undefined ? uneven?.to : undefined,
    notCompared:
      uneven?.refused === undefined ? undefined : { code: uneven.refused.code, text: uneven.refused.text },
    P0_kPa: lossFree === undefined ? undefined : kPa(lossFree.pressure),
    u_lnP0: lossFree?.uncertainty,
    source: lossFree?.sources.join(" and "),
    calibration,
    refused: refused === undefined ? undefined : { code: refused.code, text: refused.text },
  };
};

/** In reference air and, where that was not refused, at the reference speed; then in reference air alone as well. */
export const correctedDocument = ({ corrected, uncertainty, even, full }: PressureValue) => {
  const inAir = uncertainty === undefined ? undefined : kPa(uncertainty);
  const evened = even === undefined ? {} : { compared_kPa: kPa(even) };
  return full === undefined
    ? { corrected_kPa: kPa(corrected), u_corrected_kPa: inAir, ...evened }
    : {
        corrected_kPa: kPa(full.corrected),
        u_corrected_kPa: kPa(full.uncertainty),
        atReadSpeed_kPa: kPa(corrected),
        u_atReadSpeed_kPa: inAir,
        ...evened,
        lossSpeed_rpm: full.lossSpeed,
      };
};
