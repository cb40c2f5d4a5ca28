// An engine taken apart, invented, as its rows of measurements.csv.

import {
  type ClearanceLimit,
  type Engine,
  type LengthUnit,
  type Measurement,
  type TeardownAssessment,
  type TeardownItem,
  judgeTeardown,
  readMeasurements,
} from "@sealtrend/core/parts";
import { expect } from "vitest";
import { engine, inch, mm } from "./consistency-samples.ts";

export type Line = readonly [
  part: string,
  label: string,
  at: string,
  quantity: string,
  value: string | number,
];

interface How {
  readonly unit: "mm" | "in" | "N";
  readonly instrument: string;
  readonly resolution: number;
  readonly state: string;
  readonly teardown: number;
}

const usual: Readonly<Record<string, readonly [string, number]>> = {
  ring: ["feeler", 0.05],
  crank: ["dial", 0.01],
  rod: ["feeler", 0.05],
  head: ["feeler", 0.01],
  bore: ["bore-gauge", 0.01],
  "main bearing": ["bore-gauge", 0.002],
  "rod bearing": ["bore-gauge", 0.002],
};

/** Rows as measurements.csv holds them; 0.01 mm bore gauge and 0.001 mm micrometer unless told otherwise. */
export const measured = (
  lines: readonly Line[],
  how: Partial<How> = {},
  of: Engine = engine,
): readonly Measurement[] => {
  const rows = lines.map(([part, label, at, quantity, value]) => {
    const isWord = typeof value === "string" && /^[a-z]/.test(value);
    const [instrument, resolution] = usual[part] ?? ["micrometer", 0.001];
    return [
      how.teardown ?? 1,
      "2026-03-02",
      part,
      label,
      at,
      quantity,
      value,
      isWord ? "" : (how.unit ?? "mm"),
      isWord ? "eye" : (how.instrument ?? instrument),
      isWord ? "" : (how.resolution ?? resolution),
      "me",
      how.state ?? "cleaned",
      "",
    ].join(",");
  });
  const header = "teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note";
  const { measurements, problems } = readMeasurements([header, ...rows].join("\n"), "measurements.csv", of);
  if (problems.length > 0) throw new RangeError(JSON.stringify(problems[0]));
  return measurements;
};

const places = ["top/thrust", "top/axial", "middle/thrust", "middle/axial", "bottom/thrust", "bottom/axial"];

/** Six diameters in the order of quick typing. */
export const bore = (label: string, ...sizes: readonly number[]): readonly Line[] =>
  sizes.map((size, i) => ["bore", label, places[i] ?? "", "diameter", size]);

export const journal = (part: "main" | "pin", label: string, ...sizes: readonly number[]): readonly Line[] =>
  sizes.map((size, i) => [
    part,
    label,
    ["front/0", "front/90", "rear/0", "rear/90"][i] ?? "",
    "diameter",
    size,
  ]);

export const limit = (
  part: ClearanceLimit["part"],
  quantity: string,
  {
    fresh,
    wear,
    unit = "mm",
  }: {
    readonly fresh?: readonly [number | undefined, number | undefined];
    readonly wear?: readonly [number | undefined, number | undefined];
    readonly unit?: LengthUnit;
  },
): ClearanceLimit => {
  const size = unit === "in" ? inch : mm;
  const pair = ([low, high]: readonly [number | undefined, number | undefined]) => ({
    ...(low === undefined ? {} : { low: size(low) }),
    ...(high === undefined ? {} : { high: size(high) }),
  });
  return {
    part,
    quantity,
    ...(fresh === undefined ? {} : { new: pair(fresh) }),
    ...(wear === undefined ? {} : { wear: pair(wear) }),
    unit,
    written: {},
    source: "workshop manual p. 62",
  };
};

/** The maker's figures of the saw bench engine, invented. */
export const clearances: readonly ClearanceLimit[] = [
  limit("bore", "diameter", { fresh: [86.5, 86.53] }),
  limit("bore", "taper", { wear: [undefined, 0.1] }),
  limit("bore", "out-of-round", { wear: [undefined, 0.05] }),
  limit("bore", "wear", { wear: [undefined, 0.2] }),
  limit("piston", "clearance", { fresh: [0.03, 0.05], wear: [undefined, 0.15] }),
  limit("ring", "end gap", { fresh: [0.25, 0.4], wear: [undefined, 1] }),
  limit("ring", "side clearance", { wear: [undefined, 0.15] }),
  limit("main", "diameter", { fresh: [57.982, 58], wear: [57.95, undefined] }),
  limit("pin", "diameter", { fresh: [47.982, 48], wear: [47.95, undefined] }),
  limit("pin", "taper", { wear: [undefined, 0.02] }),
  limit("pin", "out-of-round", { wear: [undefined, 0.02] }),
  limit("main bearing", "clearance", { fresh: [0.02, 0.05], wear: [undefined, 0.1] }),
  limit("rod bearing", "clearance", { fresh: [0.02, 0.05], wear: [undefined, 0.1] }),
  limit("crank", "end play", { fresh: [0.1, 0.35], wear: [undefined, 0.45] }),
  limit("head", "flatness", { wear: [undefined, 0.1] }),
  limit("guide", "clearance", { wear: [undefined, 0.1] }),
];

export const saw: Engine = {
  ...engine,
  clearances,
  offered: {
    bore: { unit: "mm", sizes: [0.25, 0.5, 0.75, 1].map(mm) },
    main: { unit: "mm", sizes: [0.25, 0.5].map(mm) },
    pin: { unit: "mm", sizes: [0.25, 0.5].map(mm) },
  },
};

export const judgedAs = (
  measurements: readonly Measurement[],
  of: Engine = saw,
  teardown?: number,
): TeardownAssessment => {
  const assessment = judgeTeardown({ engine: of, measurements }, teardown);
  if (assessment === undefined) throw new RangeError("nothing was measured");
  return assessment;
};

export const all = <T>(make: (label: string) => readonly T[], labels = ["1", "2", "3", "4"]): readonly T[] =>
  labels.flatMap(make);

/** Bores, rings, mains and pins, all inside their limits. */
export const soundBores = all((label) => bore(label, 86.54, 86.53, 86.53, 86.52, 86.52, 86.52));
export const soundRings = all((label): readonly Line[] => [
  ["ring", label, "1/bottom", "end gap", "0.35..0.40"],
  ["ring", label, "2/bottom", "end gap", "0.40..0.45"],
]);
export const soundMains = all(
  (label) => journal("main", label, 57.985, 57.984, 57.985, 57.984),
  ["1", "2", "3", "4", "5"],
);
export const soundPins = all((label) => journal("pin", label, 47.985, 47.984, 47.985, 47.984));
export const sound = [...soundBores, ...soundRings, ...soundMains, ...soundPins];

export const codes = ({ work }: TeardownAssessment): readonly string[] => work.map(({ code }) => code);

/** A part of a text, inside of what is looked for. */
export const containing = (part: string): string => expect.stringContaining(part) as string;

/** Figures of a part and quantity. */
export const find = (
  items: readonly TeardownItem[],
  part: string,
  quantity: string,
  label?: string,
  at?: string,
) =>
  items.filter(
    (item) =>
      item.part === part &&
      item.quantity === quantity &&
      (label === undefined || item.label === label) &&
      (at === undefined || item.at === at),
  );

export const workOf = (lines: readonly Line[], of = saw) => judgedAs(measured(lines, {}, of), of).work;
