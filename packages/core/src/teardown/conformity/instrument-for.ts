// The instrument of one figure: as named, or the coarsest sensible one for that part where nothing was said.

import { type Length, length } from "../../quantity/index.ts";
import type { LengthUnit, MeasuredPart } from "../../record/index.ts";
import { lengthText } from "../length-text.ts";
import {
  type InstrumentCode,
  type InstrumentKind,
  finerOf,
  instrumentNamed,
  kindOf,
  usualResolution,
} from "./instruments.ts";

/** An instrument as it was used; uncertainties are standard [m]. */
export interface Instrument {
  readonly kind: InstrumentKind;
  readonly resolution: Length;
  /** Shared by all its readings: cancels in a difference. */
  readonly common: Length;
  /** Of one reading. */
  readonly read: Length;
  /** What was not said and is taken to be so. */
  readonly assumed?: "instrument" | "resolution" | "by the digits";
  /** The owner stated the uncertainty with the reading: it is `read`, and repeats do not better it. */
  readonly stated?: true;
}

/** What the digits that were written tell of the division, where nobody stated it; undefined where the usual one shows them.
 *  @param finer - divisions that the instrument is made with besides [m] */
export type DivisionBy = (usual: Length, finer: readonly Length[]) => Length | undefined;

export interface InstrumentQuestion {
  readonly part: MeasuredPart;
  readonly quantity: string;
  /** As measurements.csv holds it. */
  readonly instrument?: string;
  readonly resolution?: Length;
  /** Stated by the owner. [m] */
  readonly uncertainty?: Length;
  readonly unit: LengthUnit;
  /** Of what is measured; 75 mm where not known. */
  readonly size?: Length;
  readonly byDigits?: DivisionBy;
}

/** ±5 µm of a micrometer for 50 to 100 mm. */
const usualSize = length(0.075);

/** The coarsest instrument that somebody sensible takes to a part; of its other quantities the `rest`. */
const usualFor: Readonly<
  Record<
    MeasuredPart,
    { readonly rest: InstrumentCode; readonly own?: Readonly<Record<string, InstrumentCode>> }
  >
> = {
  bore: { rest: "telescopic", own: { ridge: "caliper", "score depth": "caliper" } },
  piston: { rest: "micrometer" },
  ring: { rest: "feeler" },
  main: { rest: "micrometer" },
  pin: { rest: "micrometer" },
  "main bearing": { rest: "telescopic", own: { "thread clearance": "thread" } },
  "rod bearing": { rest: "telescopic", own: { "thread clearance": "thread" } },
  rod: { rest: "feeler" },
  crank: { rest: "dial" },
  housing: { rest: "telescopic" },
  deck: { rest: "feeler" },
  head: { rest: "feeler" },
  guide: { rest: "small-hole gauge", own: { rocking: "dial" } },
  stem: { rest: "micrometer" },
  seat: { rest: "caliper", own: { runout: "dial" } },
  valve: { rest: "caliper" },
  spring: { rest: "caliper", own: { squareness: "feeler" } },
  chamber: { rest: "caliper" },
  crown: { rest: "caliper" },
  crack: { rest: "caliper" },
};

/** Of a figure made of readings: what its first part is measured with. */
export const usualKind = (part: MeasuredPart, quantity: string): InstrumentKind => {
  const { rest, own = {} } = usualFor[part];
  return kindOf(own[quantity] ?? rest);
};

/** An instrument of a kind and a resolution. */
export const instrumentOf = (
  kind: InstrumentKind,
  resolution: Length,
  size: Length = usualSize,
): Instrument => ({
  kind,
  resolution,
  common: length(kind.common(size, resolution)),
  read: length(kind.read(resolution)),
});

/** The instrument of one figure. A face is measured along a straightedge, whose own error counts where one is named; nothing
 *  is known of what was laid on else.  @source handbook/teardown.md 3.3, 3.4 row 8 */
export const instrumentFor = (question: InstrumentQuestion): Instrument => {
  const { part, quantity, instrument, resolution, uncertainty, unit, size, byDigits } = question;
  const named = instrument === undefined ? undefined : instrumentNamed(instrument);
  const kind = named ?? usualKind(part, quantity);
  const usual = usualResolution(kind, unit);
  const stated = resolution !== undefined && resolution > 0 ? resolution : undefined;
  const told = stated === undefined && kind.byResolution ? byDigits?.(usual, finerOf(kind, unit)) : undefined;
  const used = instrumentOf(kind, stated ?? told ?? usual, size);
  if (uncertainty !== undefined && uncertainty > 0)
    return { ...used, common: length(0), read: uncertainty, stated: true };
  if (named === undefined) return { ...used, assumed: "instrument" };
  if (told !== undefined) return { ...used, assumed: "by the digits" };
  return stated === undefined && kind.byResolution ? { ...used, assumed: "resolution" } : used;
};

/** `bore gauge 0.01 mm`; the division only where it tells. */
export const instrumentName = ({ kind, resolution }: Instrument, unit: LengthUnit): string =>
  kind.byResolution ? `${kind.name} ${lengthText(resolution, unit)}` : kind.name;

/** What the uncertainty was taken from: `bore gauge 0.01 mm, 2 readings`. */
export const instrumentText = (used: Instrument, unit: LengthUnit, readings: number): string => {
  const { kind, resolution, assumed, stated } = used;
  const repeats = readings > 1 ? `, ${String(readings)} readings` : "";
  if (stated === true) return `${kind.name}, uncertainty as you stated it${repeats}`;
  const name = instrumentName(used, unit);
  if (assumed === "instrument") return `instrument not named, taken as ${name}${repeats}`;
  if (assumed === undefined) return `${name}${repeats}`;
  const division = lengthText(resolution, unit);
  return `${kind.name}, ${division} ${assumed === "resolution" ? "assumed" : assumed}${repeats}`;
};
