// What the cranking speed did to the readings of `show`: a row, or why there is none, and what it rests on.

import {
  type CylinderAssessment,
  type LossFreeSource,
  type PressureUnit,
  type TestAssessment,
  writeNumber,
} from "@sealtrend/core/parts";
import type { ColumnsRow } from "../table.ts";
import { placesRead } from "../units.ts";
import { joined, percent } from "../words.ts";

const rpm = (speed: number): string => speed.toFixed(0);

/** `180`, or `175 to 185` where the cylinders differ. */
const fromText = ({ speed }: TestAssessment): string => {
  const { least = 0, most = 0 } = speed ?? {};
  return rpm(least) === rpm(most) ? rpm(least) : `${rpm(least)} to ${rpm(most)}`;
};

/** Whether there is a step to another speed that a reader would see. */
const isOtherSpeed = (assessment: TestAssessment): boolean => {
  const { from, to } = assessment.speed ?? {};
  return from !== undefined && (to === undefined || fromText(assessment) !== rpm(to));
};

/** `at 260 rpm   psi   191   191   192   167   (cranked at 180 rpm)`. */
export const speedRow = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const { speed, cylinders } = assessment;
  if (speed?.to === undefined || speed.refused !== undefined || !isOtherSpeed(assessment)) return [];
  const places = placesRead(assessment, unit);
  const cells = cylinders.map(({ pressures: { dry } }) =>
    dry?.full === undefined ? undefined : writeNumber(dry.full.corrected, unit, places),
  );
  return [
    {
      name: `at ${rpm(speed.to)} rpm`,
      unit,
      cells,
      tail: `(cranked at ${fromText(assessment)}${speed.uneven === undefined ? " rpm" : ""})`,
    },
  ];
};

/** Why readings whose speed was recorded stand as they are, and how cylinders at differing speeds are compared. A speed
 *  that was not recorded is listed as not known. */
export const speedText = (assessment: TestAssessment, unit: PressureUnit): string => {
  const { trust } = assessment;
  if (trust.voids === "all" || !isOtherSpeed(assessment)) return "";
  return [refusalText(assessment, unit), unevenText(assessment)].filter((text) => text !== "").join(" ");
};

const unevenText = (assessment: TestAssessment): string => {
  const { speed } = assessment;
  if (speed?.uneven === undefined) return "";
  const { to, refused } = speed.uneven;
  const cranked = `Cranked at ${fromText(assessment)} rpm`;
  if (refused === undefined) return `${cranked}: the cylinders are compared as if all were at ${rpm(to)}.`;
  const why = refused.code === speed.refused?.code ? "" : ` (${refused.text})`;
  return `${cranked} and not brought to one speed${why}: what that may explain counts against no cylinder.`;
};

const refusalText = (assessment: TestAssessment, unit: PressureUnit): string => {
  const { speed } = assessment;
  if (speed?.refused === undefined) return "";
  const where = speed.to === undefined ? "corrected for speed" : `brought to ${rpm(speed.to)} rpm`;
  return `Not ${where}: ${wrongCalibration(assessment, unit) ?? speed.refused.text}.`;
};

/** A calibration that the readings themselves contradict, with what to do about it. */
const wrongCalibration = (
  { speed, record, test }: TestAssessment,
  unit: PressureUnit,
): string | undefined => {
  const { refused, lossFree, middle } = speed ?? {};
  if (refused?.code !== "loss-free-too-low" || lossFree === undefined || middle === undefined)
    return undefined;
  if (!lossFree.sources.includes("calibration")) return undefined;
  const { gauge } = test.rows.find(({ what }) => what === "dry") ?? {};
  const whose = gauge === undefined ? "this engine" : "this gauge";
  const again = `sealtrend gauge calibrate ${gauge ?? "NAME"} --engine ${record.engine.id}`;
  return `the calibration kept for ${whose} cannot be right (${writeNumber(lossFree.pressure, unit)} ${unit} without any loss, yet ${writeNumber(middle, unit)} was read): calibrate again (${again})`;
};

const sources: Readonly<Record<LossFreeSource, string>> = {
  default: "the middle of this test and the usual losses",
  "maker's figure": "the maker's figure for a new engine",
  geometry: "the sizes of the engine",
  calibration: "readings at two speeds",
};

/** Paragraphs: what was done, from what, and what it leaves in doubt. */
export const speedWhy = (assessment: TestAssessment, unit: PressureUnit): readonly string[] => {
  const { speed, record } = assessment;
  if (speed === undefined) return [];
  const { to, lossFree, calibration, refused } = speed;
  if (refused !== undefined) return [refusalText(assessment, unit)];
  if (to === undefined || lossFree === undefined) return [];
  const { speed: makers, speedRange } = record.engine.compressionLimits;
  const whose =
    makers === undefined
      ? "the middle speed of this engine's tests"
      : speedRange === undefined
        ? "the maker's speed"
        : `the middle of the maker's ${speedRange}`;
  const fellows =
    speed.uneven === undefined || speed.uneven.refused !== undefined
      ? "as read"
      : `at ${rpm(speed.uneven.to)} rpm`;
  const said = calibration === undefined ? "" : ` (${calibration})`;
  const whence = joined(lossFree.sources.map((source) => sources[source]));
  return [
    `Cranked at ${fromText(assessment)} rpm, held against ${rpm(to)} rpm, ${whose}. Without any loss this engine would read ${writeNumber(lossFree.pressure, unit, placesRead(assessment, unit))} ${unit} ± ${percent(lossFree.uncertainty)} (P0), from ${whence}${said}.`,
    `The loss speed says how strongly a reading goes with the speed; it grows with leak and wear. The rule is a cycle model's, not a published one; limits and other years are held against the reading at that speed, the cylinders of one test against each other ${fellows}.`,
  ];
};

/** `, 191.2 ± 8.6 psi at 260 rpm, loss speed 70 rpm` of one cylinder. */
export const lossText = (
  { pressures: { dry } }: CylinderAssessment,
  assessment: TestAssessment,
  unit: PressureUnit,
): string => {
  const { to } = assessment.speed ?? {};
  if (dry?.full === undefined || to === undefined) return "";
  const places = placesRead(assessment, unit);
  const { corrected, uncertainty, lossSpeed } = dry.full;
  const value = `${writeNumber(corrected, unit, places)} ± ${writeNumber(uncertainty, unit, Math.max(1, places ?? 1))}`;
  return `, ${value} at ${rpm(to)} rpm (loss speed ${rpm(lossSpeed)} rpm)`;
};
