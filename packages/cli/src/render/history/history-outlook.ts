// Sentences of `history` about limits: how far off they are, and when wear reaches them, where that can be told.

import {
  type CylinderHistory,
  type KindHistory,
  type PressureUnit,
  placeText,
  writeQuantity,
} from "@sealtrend/core/parts";
import { isAlone } from "./history-numbers.ts";
import { hasDropped, hasRate, heldAt, othersOf } from "./history-sentences.ts";
import { count, cylinders as named, joined } from "../words.ts";

export interface OutlookOptions {
  readonly unit: PressureUnit;
  readonly today: string;
}

interface Places {
  readonly crossing?: number;
  readonly low?: number;
  readonly high?: number;
}

/** What the forecast allows to say of one cylinder against the others; nothing where it has no limit. */
export const limitSentence = (
  cylinder: CylinderHistory,
  kind: KindHistory,
  today: string,
): string | undefined => {
  const { limit, label } = cylinder;
  if (limit === undefined) return undefined;
  const { crossing, notBefore, lastRatio } = limit;
  const level = `${limit.value.toFixed(2)} of ${othersOf(kind)}`;
  if (crossing === undefined)
    return notBefore === undefined || isOver(kind, notBefore, today)
      ? undefined
      : `${label} does not reach ${level} before ${whenText(kind, notBefore)} (9 chances in 10).`;
  if (crossing <= lastPlace(kind))
    return `By this line ${label} is under ${level} already, though it last read ${lastRatio.toFixed(2)}.`;
  const range = rangeText(kind, limit);
  if (isOver(kind, crossing, today)) return `By this line ${label} would have reached ${level}${range}.`;
  const how = hasRate(cylinder, kind) ? "At this rate" : "If this goes on";
  return `${how} ${label} reaches ${level} ${about(kind, crossing)}${range}.`;
};

/** Those whose last reading lies under the limit: `Cylinders 2 and 3 last read 0.62 and 0.68 of the others, under 0.75.` */
export const underSentence = (
  cylinders: readonly CylinderHistory[],
  kind: KindHistory,
): readonly string[] => {
  const under = cylinders.filter(({ alarms }) => !alarms.includes("no-compression")).filter(isUnderRatio);
  const [value] = under.flatMap(({ limit }) => limit?.value ?? []);
  if (value === undefined) return [];
  const labels = under.map(({ label }) => label);
  const ratios = under.flatMap(({ limit }) => limit?.lastRatio.toFixed(2) ?? []);
  return [`${named(labels)} last read ${joined(ratios)} of ${othersOf(kind)}, under ${value.toFixed(2)}.`];
};

/** Whether its last reading is under its limit against the others. */
export const isUnderRatio = ({ limit }: CylinderHistory): boolean =>
  limit !== undefined && limit.lastRatio < limit.value;

/** Where the engine stands above the maker's minimum: of the cylinder that reaches it first, else of the lowest. */
export const minimumSentence = (
  cylinders: readonly CylinderHistory[],
  kind: KindHistory,
  { unit, today }: OutlookOptions,
): string | undefined => {
  const known = cylinders.flatMap((cylinder) => {
    const { absolute, label } = cylinder;
    if (absolute === undefined) return [];
    const { trend, ...level } = absolute;
    return [{ label, ...level, ...(trend === undefined || isStep(cylinder) ? {} : { trend }) }];
  });
  const [lowest] = known.toSorted((a, b) => a.last - b.last);
  if (lowest === undefined) return undefined;
  const [told = lowest] =
    lowest.last < lowest.minimum
      ? []
      : known
          .filter(({ trend }) => trend?.crossing !== undefined)
          .toSorted((a, b) => (a.trend?.crossing ?? 0) - (b.trend?.crossing ?? 0));
  const limit = writeQuantity(Math.exp(told.minimum), unit);
  const minimum = `the maker's minimum of ${limit}`;
  const last = `${writeQuantity(Math.exp(told.last), unit)}${heldAt(kind, told.test)}`;
  const which = known.length > 1 && told.label === lowest.label ? ", the lowest," : "";
  const read = `${isAlone(kind) ? "The cylinder" : `Cylinder ${told.label}`}${which} last read ${last}`;
  if (told.last >= told.minimum)
    return `${read}; ${reachText(told.trend, minimum, kind, today) ?? `the maker's minimum is ${limit}`}.`;
  const under = known.filter((one) => one.last < one.minimum).length;
  return `${read}, under ${minimum}${under > 1 ? `, as ${count(under)} of ${count(known.length)} do` : ""}.`;
};

/** Whether it went in one step, or the last test alone speaks against it: no rate can be drawn on from there. */
export const isStep = (cylinder: CylinderHistory): boolean =>
  cylinder.course.startsWith("stepped") || cylinder.shape?.shape === "sudden" || hasDropped(cylinder);

/** Whether a day is named on which it reaches the minimum. */
export const reachesMinimum = (cylinder: CylinderHistory): boolean =>
  cylinder.absolute?.trend?.crossing !== undefined && !isStep(cylinder);

const reachText = (
  trend: NonNullable<CylinderHistory["absolute"]>["trend"],
  minimum: string,
  kind: KindHistory,
  today: string,
): string | undefined => {
  const { crossing, notBefore } = trend ?? {};
  if (trend !== undefined && crossing !== undefined) {
    if (crossing <= lastPlace(kind)) return `the line through its readings is under ${minimum} already`;
    const when = `${minimum} ${about(kind, crossing)}${rangeText(kind, trend)}`;
    return isOver(kind, crossing, today)
      ? `by the line through its readings it would have reached ${when}`
      : `at this rate it reaches ${when}`;
  }
  return notBefore === undefined || isOver(kind, notBefore, today)
    ? undefined
    : `it does not reach ${minimum} before ${whenText(kind, notBefore)} (9 chances in 10)`;
};

/** Whether a place lies behind today, or behind the last test. */
const isOver = (kind: KindHistory, x: number, today: string): boolean => {
  const place = placeText(kind, x);
  return x <= lastPlace(kind) || (typeof place === "string" && place <= today);
};

const lastPlace = ({ result }: KindHistory): number => result.tests.at(-1)?.x ?? 0;

/** `about 2031-05`, `at about 585 h`. */
const about = (kind: KindHistory, x: number): string =>
  `${typeof placeText(kind, x) === "string" ? "" : "at "}about ${whenText(kind, x)}`;

/** The month, or the meter to the three digits that a forecast can carry at most. */
const whenText = (kind: KindHistory, x: number): string => {
  const place = placeText(kind, x);
  return typeof place === "number"
    ? `${String(Number(place.toPrecision(3)))} ${kind.result.axis.unit}`
    : place.slice(0, 7);
};

const rangeText = (kind: KindHistory, { low, high }: Places): string => {
  if (low === undefined) return "";
  const until = high === undefined ? "no end in sight" : whenText(kind, high);
  return ` (${whenText(kind, low)} to ${until}, 8 chances in 10)`;
};
