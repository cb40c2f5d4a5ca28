// The limit of the worst channel of wear, moved, in the unit it is stated in.

import {
  type DecisionAssessment,
  type PressureUnit,
  type WearChannel,
  fromSi,
  writeNumber,
} from "@sealtrend/core/parts";
import { fixed } from "../words.ts";

/** The channel that the chance is of; absent where it is not known. */
export const worstChannel = ({
  wear,
  decision,
}: Pick<DecisionAssessment, "wear" | "decision">): WearChannel | undefined =>
  wear.find(
    ({ label, probability }) =>
      label === (decision.chance?.label ?? label) && probability === decision.chance?.probability,
  );

/** `0.88 of the others`, `26 bar`; undefined where the channel is not known.  @param at, value - ln, moved and as it stands */
export const limitAt = (
  assessment: Pick<DecisionAssessment, "wear" | "decision">,
  {
    at,
    value,
    unit,
    places = 2,
  }: {
    readonly at: number;
    readonly value: number;
    readonly unit: PressureUnit;
    readonly places?: number;
  },
): string | undefined => {
  const channel = worstChannel(assessment);
  if (channel === undefined) return undefined;
  return limitWords(channel, channel.limit * Math.exp(at - value), { unit, places });
};

/** The same as numbers of a document. @param at, value - ln, moved and as it stands */
export const limitDocument = (
  assessment: Pick<DecisionAssessment, "wear" | "decision">,
  at: number,
  value: number,
) => {
  const channel = worstChannel(assessment);
  const moved = { by: Math.expm1(at - value) };
  if (channel === undefined) return moved;
  const limit = channel.limit * Math.exp(at - value);
  return channel.against === "maker-minimum"
    ? { ...moved, limit_kPa: fromSi(limit, "kPa") }
    : { ...moved, limit_ratio: limit };
};

/** `its cranking limit (0.75 of the others, a usual rule)`: the one that the chance is of. */
export const limitNamed = (
  assessment: Pick<DecisionAssessment, "wear" | "decision">,
  unit: PressureUnit,
): string => {
  const channel = worstChannel(assessment);
  if (channel === undefined) return "its cranking limit";
  const usual = channel.limitFrom === "usual" ? ", a usual rule" : "";
  return `its cranking limit (${limitWords(channel, channel.limit, { unit })}${usual})`;
};

/** A limit in words. @param limit - ratio, or pressure [Pa gauge]  @param places - of a ratio */
export const limitWords = (
  { against }: WearChannel,
  limit: number,
  { unit, places = 2 }: { readonly unit: PressureUnit; readonly places?: number },
): string =>
  against === "ratio-to-others"
    ? `${fixed(limit, places)} of the others`
    : `${writeNumber(limit, unit)} ${unit}`;
