// The maker's limits for parts and the sizes that are offered, as `engine show` tells them.

import { type ClearanceLimit, type Engine, type LimitPair, fromSi } from "@sealtrend/core/parts";
import { clean } from "./clean.ts";

/** A text for each part, `bore: diameter new 86 to 86.03, worn to 86.2 mm; taper worn to 0.1 mm`, then where they come from. */
export const clearanceTexts = ({ clearances }: Engine): readonly string[] => {
  const parts = [...new Set(clearances.map(({ part }) => part))];
  const sources = [...new Set(clearances.map(({ source }) => source))];
  const [source] = sources;
  const isOne = sources.length === 1;
  return [
    ...parts.map((part) => {
      const own = clearances.filter((limit) => limit.part === part);
      return `${part}: ${own.map((limit) => limitText(limit, isOne ? "once" : "each")).join("; ")}`;
    }),
    ...(isOne && source !== undefined ? [`source ${clean(source)}`] : []),
  ];
};

/** One limit by itself: `bore taper worn to 0.10 mm (manual p. 62)`. */
export const clearanceText = (limit: ClearanceLimit): string => `${limit.part} ${limitText(limit, "each")}`;

const limitText = (limit: ClearanceLimit, sources: "once" | "each"): string => {
  const { quantity, label, at, source, also, written } = limit;
  const which = [at, label].flatMap((one) => (one === undefined ? [] : [clean(one)]));
  const second = also === undefined ? "" : ` (also printed: ${kindsText({ ...also, written }, "also.")})`;
  const from = sources === "each" && source !== undefined ? ` (${clean(source)})` : "";
  const named = which.length === 0 ? quantity : `${quantity} (${which.join(" ")})`;
  return `${named} ${kindsText(limit, "")}${second}${from}`;
};

type Printed = Pick<ClearanceLimit, "new" | "wear" | "unit" | "written">;

/** `new 86.00 to 86.03, worn to 86.20 mm`. */
const kindsText = (limit: Printed, prefix: "" | "also."): string => {
  const kinds = (["new", "wear"] as const).flatMap((kind) => {
    const pair = limit[kind];
    if (pair === undefined) return [];
    return [`${kind === "new" ? "new" : "worn"} ${pairText(limit, kind, pair, prefix)}`];
  });
  return `${kinds.join(", ")} ${limit.unit}`;
};

const pairText = (
  { written, unit }: Printed,
  kind: "new" | "wear",
  { low, high }: LimitPair,
  prefix: "" | "also.",
): string => {
  const end = (name: "low" | "high", metres: number): string =>
    written[`${prefix}${kind}.${name}`] ?? plain(metres, unit);
  if (low !== undefined && high !== undefined) return `${end("low", low)} to ${end("high", high)}`;
  if (high !== undefined) return `to ${end("high", high)}`;
  return low === undefined ? "" : `${kind === "new" ? "from" : "down to"} ${end("low", low)}`;
};

/** `bore 0.25 0.5 mm`. */
export const offeredTexts = ({ offered }: Engine): readonly string[] =>
  Object.entries(offered).map(
    ([part, { unit, sizes }]) => `${part} ${sizes.map((size) => plain(size, unit)).join(" ")} ${unit}`,
  );

const plain = (metres: number, unit: ClearanceLimit["unit"]): string =>
  String(Number(fromSi(metres, unit).toPrecision(9)));
