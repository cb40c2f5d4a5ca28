// The limits of engine.json that a measurement will be held against, in words.

import { type UnitName, fromSi } from "../../quantity/index.ts";
import type { ClearanceLimit, LengthUnit, MeasuredPart } from "../../record/index.ts";

export interface MeasureLimit {
  readonly part: MeasuredPart;
  readonly quantity: string;
  readonly kind: "new" | "wear";
  /** [m] */
  readonly low?: number;
  readonly high?: number;
  readonly source?: string;
  /** `bore taper up to 0.1 mm (wear)` */
  readonly text: string;
}

/** Those of some parts and quantities, new and wear apart. */
export const limitsOf = (
  limit: ClearanceLimit,
  { parts, quantities }: { readonly parts: readonly MeasuredPart[]; readonly quantities: readonly string[] },
): readonly MeasureLimit[] => {
  const { part, quantity, source } = limit;
  if (!parts.includes(part) || !quantities.includes(quantity)) return [];
  return (["new", "wear"] as const).flatMap((kind): MeasureLimit[] => {
    const pair = limit[kind];
    if (pair === undefined) return [];
    return [
      {
        part,
        quantity,
        kind,
        ...pair,
        ...(source === undefined ? {} : { source }),
        text: textOf(limit, kind),
      },
    ];
  });
};

const textOf = (
  { part, quantity, unit, written, ...limit }: ClearanceLimit,
  kind: "new" | "wear",
): string => {
  const end = (side: "low" | "high"): string | undefined => {
    const value = limit[kind]?.[side];
    return value === undefined ? undefined : (written[`${kind}.${side}`] ?? plainFigure(value, unit));
  };
  const [low, high] = [end("low"), end("high")];
  const range =
    low === undefined ? `up to ${high ?? ""}` : high === undefined ? `at least ${low}` : `${low} to ${high}`;
  return `${part} ${quantity} ${range} ${unit} (${kind})`;
};

const plainFigure = (metres: number, unit: LengthUnit): string =>
  String(Number(fromSi(metres, unit satisfies UnitName).toPrecision(6)));
