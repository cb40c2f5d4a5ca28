// `crankingCurve` of engine.json: what a calibration at two speeds found, an entry a gauge.

import { gaugePressure, readQuantity, unitsOf } from "../quantity/index.ts";
import { type JsonObject, isObject } from "./json-view.ts";
import type { CrankingCurve } from "./engine-types.ts";

/** What an entry must hold, in words; undefined where the value is a list of sound entries. */
export const curvesFault = (value: unknown): string | undefined => {
  if (!Array.isArray(value)) return "a list of entries, each in { }, between [ and ]";
  const entries: readonly unknown[] = value;
  const faults = entries.map(entryFault);
  const bad = faults.findIndex((fault) => fault !== undefined);
  const which = entries.length > 1 ? ` in entry ${String(bad + 1)}` : "";
  return bad === -1 ? undefined : `${faults[bad] ?? ""}${which}`;
};

const entryFault = (entry: unknown): string | undefined => {
  if (!isObject(entry)) return "{ } around gauge, P0, u_ln and source";
  if (pascals(entry) === undefined)
    return `P0, a pressure above 0 such as "3400kPa" (${unitsOf("pressure").join(", ")})`;
  const { u_ln: uncertainty } = entry;
  if (typeof uncertainty !== "number" || !(uncertainty > 0 && uncertainty <= 0.5))
    return "u_ln, a number above 0 and up to 0.5, such as 0.05 for 5 %";
  const text = ["gauge", "source"].find(
    (name) => entry[name] !== undefined && typeof entry[name] !== "string",
  );
  return text === undefined ? undefined : `${text} as text in double quotes`;
};

const pascals = ({ P0 }: JsonObject): number | undefined => {
  const reading = typeof P0 === "string" ? readQuantity(P0, "pressure") : undefined;
  return reading?.ok === true && reading.si > 0 ? reading.si : undefined;
};

/** The entries of a list without fault. */
export const curvesOf = (value: unknown): readonly CrankingCurve[] =>
  (Array.isArray(value) ? (value as readonly unknown[]) : []).flatMap((entry): CrankingCurve[] => {
    const P0 = isObject(entry) ? pascals(entry) : undefined;
    if (!isObject(entry) || P0 === undefined) return [];
    const { gauge, source } = entry;
    return [
      {
        ...(typeof gauge === "string" && gauge !== "" ? { gauge } : {}),
        P0: gaugePressure(P0),
        uncertainty: Number(entry.u_ln),
        ...(typeof source === "string" ? { source } : {}),
      },
    ];
  });
