// For which engine, speed and air an expected pressure holds, and what the maker printed, brought to the same air.

import {
  type EngineRecord,
  type GaugePressure,
  type PressureCorrection,
  type PressureUnit,
  fromSi,
  gaugePressure,
  length,
  pressureAtAltitude,
  seaLevelPressure,
} from "@sealtrend/core/parts";
import type { Known } from "../../commands/expect-steps/expect-known.ts";
import { percent, sentence } from "../words.ts";
import type { Expected } from "./expect-cautions.ts";
import { kindWords } from "./expect-inputs.ts";
import { type System, type Units, asTold, held } from "./expect-units.ts";

const heights: Units = { metric: ["m", 0], us: ["ft", 0] };
const barometers: Units = { metric: ["kPa", 1], us: ["inHg", 1] };
const walls: Units = { metric: ["C", 0], us: ["F", 0] };

/** What a reading loses over a height, by the standard atmosphere. */
export const lessOver = (metres: number): number => 1 - pressureAtAltitude(length(metres)) / seaLevelPressure;

/** `Spark engine, engine warm, cranked at 250 rpm (assumed), at sea level …`. */
export const circumstances = ({ answer, known, record }: Expected, system: System): string => {
  const { kind, kindFrom, sources } = known;
  const guessed = kindFrom === undefined ? " (by its ratio; --ignition settles it)" : "";
  const heat = answer.model.heat === "none" ? ", no heat lost" : "";
  const from = { typed: "", engine: " (the maker's)", assumed: " (assumed)" }[sources.speed ?? "assumed"];
  const speed = `${held(`${String(Math.round(answer.model.speed))} rpm`)}${from}`;
  const said = `${kindWords[kind]}${guessed}, ${warmthOf(known, system)}, cranked at ${speed}, ${placeOf(known, system)}${heat}, read when the needle stops.`;
  return record === undefined ? sentence(said) : `${record.engine.name}: ${said}`;
};

const warmthOf = ({ cylinder, typed }: Known, system: System): string => {
  if (cylinder.wall !== undefined)
    return `cylinder walls at ${held(asTold(cylinder.wall, walls, system, typed.wall))}`;
  return cylinder.engine === "cold" ? "engine as cold as the air" : "engine warm";
};

const placeOf = ({ air, altitude, typed }: Known, system: System): string => {
  const pressure = (as?: Known["typed"]["qnh"]): string =>
    `${held(asTold(air.station, barometers, system, as))} of air`;
  switch (air.from) {
    case "assumed": {
      const [step, metres] = system === "us" ? ["1000 ft", 304.8] : ["100 m", 100];
      return `at sea level (no height given: ${held(percent(lessOver(metres), 1))} less for each ${held(step)} up)`;
    }
    case "altitude":
      return `at ${held(asTold(altitude ?? 0, heights, system, typed.altitude))} (${pressure()})`;
    case "qnh":
      return `with ${pressure()} (weather report)`;
    case "station":
      return `with ${pressure(typed["station-pressure"])} (barometer)`;
  }
};

/** A figure for reference air, in the air of the day. P = P_ref · p/p_ref */
export const inThisAir = (figure: GaugePressure, { factor }: PressureCorrection): GaugePressure =>
  gaugePressure(figure / factor);

/** What the maker printed stands beside the band, unjudged. */
export const makersFigure = (
  record: EngineRecord | undefined,
  air: PressureCorrection,
  unit: PressureUnit,
): readonly string[] => {
  const limits = record?.engine.compressionLimits;
  if (limits?.new === undefined) return [];
  const written = (pressure: GaugePressure): string =>
    `${String(Number(fromSi(pressure, unit).toPrecision(3)))} ${unit}`;
  const printed = written(limits.new);
  const here = written(inThisAir(limits.new, air));
  const source = limits.source === undefined ? "" : ` (${limits.source})`;
  const speed = limits.speed === undefined ? "" : ` It holds for ${String(Math.round(limits.speed))} rpm.`;
  return [
    `The maker's figure for a new engine: ${printed} at sea level${here === printed ? "" : `, here ${here}`}${source}.${speed}`,
  ];
};
