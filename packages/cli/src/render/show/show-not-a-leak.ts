// A low cylinder whose leak-down is as good as that of its fellows, where the sizes are not known that would tell more.

import type { TestAssessment } from "@sealtrend/core";
import { joined, percent } from "../words.ts";

/** A sentence on the cylinders whose leak and reading could not be held against each other by the sizes of the engine. */
export const notALeakText = ({ cylinders, leak, record }: TestAssessment): string => {
  const sized = new Set(leak?.cranking?.cylinders.map(({ label }) => label));
  const low = cylinders.filter(({ label, lowWithoutLeak }) => lowWithoutLeak === true && !sized.has(label));
  if (low.length === 0) return "";
  const lost = (some: typeof cylinders): string => {
    const parts = some.flatMap(({ leakDown }) => leakDown?.lost ?? []);
    const [least, most] = [percent(Math.min(...parts)), percent(Math.max(...parts))];
    return least === most ? most : `${least.replace(" %", "")} to ${most}`;
  };
  const others = cylinders.filter((one) => !low.includes(one) && one.leakDown !== undefined);
  const beside = others.length === 0 ? "" : `, the others ${lost(others)}`;
  const one = low.length === 1;
  const { bore, stroke, compressionRatio } = record.engine.geometry;
  const lacks = [
    ...(bore === undefined ? ["bore"] : []),
    ...(stroke === undefined ? ["stroke"] : []),
    ...(compressionRatio === undefined ? ["compression ratio"] : []),
  ];
  const settle = lacks.length === 0 ? "the restrictor of the tester" : `${joined(lacks)} in engine.json`;
  return `${joined(low.map(({ label }) => label))} lost ${lost(low)} in the leak-down${beside}: the low reading does not look like a leak. Look at valve lift, timing, intake, chamber volume and hose of ${one ? "it" : "them"}; ${settle} would settle it.`;
};
