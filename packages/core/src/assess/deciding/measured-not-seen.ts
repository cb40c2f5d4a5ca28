// What nobody measured of bores, rings and bearings, or measured and cannot tell from.

import type { MeasuredPart } from "../../record/index.ts";
import { type MeasuredPlace, figureText, spoiltParts, stayingVerdict } from "../../teardown/index.ts";
import { listed } from "../labels.ts";
import type { Deciding } from "./deciding.ts";
import type { MeasuredNow } from "./measured-now.ts";

const names: Readonly<Partial<Record<MeasuredPlace, string>>> = {
  bore: "bores",
  rings: "ring gaps",
  bottom: "bearings",
};
const partsOf: Readonly<Partial<Record<MeasuredPlace, readonly MeasuredPart[]>>> = {
  bore: ["bore", "piston"],
  rings: ["ring"],
  bottom: ["main", "pin", "main bearing", "rod bearing"],
};
const places = ["bore", "rings", "bottom"] as const;

interface Left {
  readonly line: "measured";
  readonly text: string;
  readonly command: string;
  readonly why?: string;
}

/** One entry for what of them is not proved beyond or inside its limits; none where all of it is. */
export const measuredNotSeen = (deciding: Deciding): readonly Left[] => {
  const { measured } = deciding;
  const told = (place: MeasuredPlace): boolean =>
    measured?.found.some((one) => one.place === place && (one.within === "yes" || one.beyond.length > 0)) ===
    true;
  const left = places.filter((place) => !told(place));
  if (left.length === 0) return [];
  const why = whyOf(deciding, measured, left);
  return [
    {
      line: "measured",
      text: `${listed(left.map((place) => names[place] ?? place))} measured`,
      command: `sealtrend teardown ${deciding.record.engine.id}`,
      ...(why === undefined ? {} : { why }),
    },
  ];
};

/** Why what was measured of them does not count. */
const whyOf = (
  { record }: Deciding,
  measured: MeasuredNow | undefined,
  left: readonly MeasuredPlace[],
): string | undefined => {
  if (record.measurements.length === 0) return undefined;
  if (measured === undefined) return "what was measured is older than a year, or from before work on it";
  const own = measured.found.filter(({ place }) => left.includes(place));
  const [close, ...closer] = own.flatMap(({ open }) => open);
  if (close !== undefined)
    return `${close.waits === undefined ? "too close to tell" : "waits to be cleared up"}: ${figureText(close, stayingVerdict(close))}${closer.length === 0 ? "" : `, and ${String(closer.length)} more`}`;
  const spoilt = spoiltParts(measured.assessment).find(({ part }) =>
    left.some((place) => partsOf[place]?.includes(part)),
  );
  if (spoilt !== undefined) return spoilt.text;
  if (own.length > 0) return "only some of them were measured";
  const bare = measured.assessment.withoutLimit.some(({ part }) =>
    left.some((place) => partsOf[place]?.includes(part)),
  );
  return bare ? "measured, but engine.json has no limits for them" : undefined;
};

/** Grooves are seen by the side clearance of a ring, bearings by their clearance or their journals. */
export const unmeasuredParts = (deciding: Deciding): readonly ("ring grooves" | "bearings")[] => {
  const { measured } = deciding;
  const isGrooves = measured?.assessment.parts.some(
    ({ part, quantity, label }) => part === "ring" && quantity === "side clearance" && label === undefined,
  );
  const isBottom = measured?.found.some(
    ({ place, within, beyond }) => place === "bottom" && (within === "yes" || beyond.length > 0),
  );
  return [
    ...(isGrooves === true ? [] : (["ring grooves"] as const)),
    ...(isBottom === true ? [] : (["bearings"] as const)),
  ];
};
