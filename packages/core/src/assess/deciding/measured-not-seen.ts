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

/** One entry for those of which the same is to be said; none where all of it is proved beyond or inside its limits. */
export const measuredNotSeen = (deciding: Deciding): readonly Left[] => {
  const { measured, record } = deciding;
  const told = (place: MeasuredPlace): boolean =>
    measured?.found.some((one) => one.place === place && (one.within === "yes" || one.beyond.length > 0)) ===
    true;
  const left = places
    .filter((place) => !told(place))
    .map((place) => ({ place, why: whyOf(deciding, measured, place) }));
  const whys = [...new Set(left.map(({ why }) => why))];
  return whys.map((why) => {
    const alike = left.filter((one) => one.why === why).map(({ place }) => names[place] ?? place);
    return {
      line: "measured",
      text: `${listed(alike)} measured`,
      command: `sealtrend teardown ${record.engine.id}`,
      ...(why === undefined ? {} : { why }),
    };
  });
};

/** Why what was measured there does not count. */
const whyOf = (
  { record }: Deciding,
  measured: MeasuredNow | undefined,
  place: MeasuredPlace,
): string | undefined => {
  if (record.measurements.length === 0) return undefined;
  if (measured === undefined) return "what was measured is older than a year, or from before work on it";
  const { assessment, found } = measured;
  const own = found.filter((one) => one.place === place);
  const [close, ...closer] = own.flatMap(({ open }) => open);
  if (close !== undefined)
    return `${close.waits === undefined ? "too close to tell" : "waits to be cleared up"}: ${figureText(close, stayingVerdict(close))}${closer.length === 0 ? "" : `, and ${String(closer.length)} more`}`;
  const isThere = (part: MeasuredPart | undefined): boolean =>
    part !== undefined && partsOf[place]?.includes(part) === true;
  const spoilt = spoiltParts(assessment).find(({ part }) => isThere(part));
  if (spoilt !== undefined) return spoilt.text;
  if (own.length > 0) return "only some of them were measured";
  const torn = assessment.conflicts.find(({ part, weight }) => weight === "conflict" && isThere(part));
  if (torn !== undefined) return torn.text;
  const bare = assessment.withoutLimit.some(({ part }) => isThere(part));
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
