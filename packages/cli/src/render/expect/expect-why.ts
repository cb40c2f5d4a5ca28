// What stands behind an expected pressure, for --why: the sizes it computed and what the gas did.

import { fromSi } from "@sealtrend/core";
import type { Expected } from "./expect-cautions.ts";
import type { Telling } from "./expect-units.ts";
import { prose } from "../prose.ts";
import { fixed, percent } from "../words.ts";

const heats = {
  hohenberg: "Hohenberg (1979)",
  annand: "Annand (1963)",
  woschni: "Woschni (1967)",
  none: "none",
} as const;

export const expectWhy = (
  { answer }: Expected,
  { unit, system, width, letters }: Telling,
): readonly string[] => {
  const { cycle, model, clearance, swept, trappedRatio, trappedRatioWithHose, uncertainty } = answer;
  const room = (si: number): string =>
    system === "us" ? `${fixed(fromSi(si, "in3"), 2)} in3` : `${fixed(fromSi(si, "cm3"), 1)} cm3`;
  const pressure = (si: number): string => `${String(Number(fromSi(si, unit).toPrecision(4)))} ${unit}`;
  const warmth = system === "us" ? "F" : "C";
  const gamma = model.gamma === "variable" ? "with temperature" : fixed(model.gamma, 3);
  const lines = [
    `sizes: sweeps ${room(swept)} over a chamber of ${room(clearance)}; traps ${fixed(trappedRatio, 2)} times the chamber, ${fixed(trappedRatioWithHose, 2)} with the hose`,
    `reading: ${pressure(answer.expected)}, one standard deviation ${percent(uncertainty, 1)}; the band is two`,
    `peak: ${pressure(cycle.peak)} above vacuum, ${fixed(Math.abs(cycle.peakAngle), 1)} deg ${cycle.peakAngle > 0 ? "after" : "before"} top dead centre at ${fixed(fromSi(cycle.peakTemperature, warmth), 0)} ${warmth}; ${percent(cycle.massLeft, 1)} of the charge is left; exponent ${fixed(cycle.exponent, 3)}`,
    `model: first law for the trapped air, leak as an orifice, heat to the walls after ${heats[model.heat]}, ratio of specific heats ${gamma}; each "if off by" is one standard deviation, and they add as squares`,
    "sources: what is assumed is from memory and judgement, not a maker's data; five petrol engines whose makers print a figure lie within 10 % of this method, one diesel 21 % under it",
  ];
  return lines.flatMap((line) => {
    const [head = "", ...rest] = line.split(": ");
    return prose(letters(rest.join(": ")), width, `${head}: `);
  });
};
