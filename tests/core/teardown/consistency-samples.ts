// Figures of an engine taken apart, all invented; sizes in the unit that the first letter of the builder names.

import { type Engine, type MeasuredPart, type TeardownItem, length, toSi } from "@sealtrend/core";

export const mm = (value: number) => length(toSi(value, "mm"));
export const inch = (value: number) => length(toSi(value, "in"));

export const engine: Engine = {
  id: "saw",
  name: "Saw bench (invented)",
  use: "stationary",
  remote: false,
  cylinders: ["1", "2", "3", "4"],
  banks: [["1", "2", "3", "4"]],
  sharedGasket: true,
  firingOrder: ["1", "3", "4", "2"],
  cycle: "four-stroke",
  porting: "valves",
  ignition: "spark",
  cooling: "liquid",
  compressionRelease: "none",
  geometry: { bore: mm(86.5) },
  crankingCurves: [],
  correction: {},
  compressionLimits: {},
  leakDownLimits: {},
  clearances: [],
  offered: {},
  layout: {},
};

export const labels = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => String(i + 1));

export interface Place {
  readonly part: MeasuredPart;
  readonly quantity: string;
  readonly label?: string;
  readonly at?: string;
}

/** A figure by an instrument of 5 um, in millimetres unless told otherwise. */
export const figure = (place: Place, value: number, more: Partial<TeardownItem> = {}): TeardownItem => ({
  ...place,
  value: more.unit === "in" ? inch(value) : mm(value),
  uncertainty: mm(0.005),
  uncertaintyFrom: "bore gauge 0.01 mm",
  readings: 1,
  unit: "mm",
  state: "as found",
  verdicts: [],
  ...more,
});

/** The same figure of cylinders or journals 1, 2, 3 … */
export const row = (
  place: Omit<Place, "label">,
  values: readonly number[],
  more: Partial<TeardownItem> = {},
): readonly TeardownItem[] =>
  values.map((value, i) => figure({ ...place, label: String(i + 1) }, value, more));
