// What the logbook holds, as plain values: engines, gauges, tests, services, notes. SI inside.

import type {
  AbsolutePressure,
  GaugePressure,
  Length,
  PressureUnit,
  Speed,
  Temperature,
  Volume,
} from "../quantity/index.ts";

/** `YYYY-MM-DD`, local wall date, kept as text. */
export type IsoDate = string;

export type Use = "road" | "farm" | "stationary" | "boat" | "motorcycle" | "aircraft" | "other";
export type Ignition = "spark" | "compression" | "unknown";
export type MeterUnit = "h" | "km" | "mi";

export interface CompressionLimits {
  readonly new?: GaugePressure;
  readonly minimum?: GaugePressure;
  /** Largest difference between two cylinders [Pa]. */
  readonly difference?: GaugePressure;
  /** Least lowest/highest, a fraction. */
  readonly lowestToHighest?: number;
  readonly speed?: Speed;
  readonly source?: string;
}

export interface Engine {
  readonly id: string;
  readonly name: string;
  readonly use: Use;
  readonly remote: boolean;
  /** Labels in the order of the owner's numbering. */
  readonly cylinders: readonly string[];
  /** Labels in physical order along each head. */
  readonly banks: readonly (readonly string[])[];
  readonly sharedGasket: boolean;
  readonly firingOrder: readonly string[];
  readonly cycle: "four-stroke" | "two-stroke";
  readonly porting: "valves" | "ports" | "ports-and-exhaust-valve";
  readonly ignition: Ignition;
  readonly cooling?: "liquid" | "air";
  readonly meter?: MeterUnit;
  readonly homeAltitude?: Length;
  readonly compressionRelease: "none" | "automatic" | "manual" | "unknown";
  readonly wetTest?: { readonly allowed: boolean; readonly oil?: Volume; readonly source?: string };
  readonly compressionLimits: CompressionLimits;
  readonly leakDownLimits: { readonly lost?: number; readonly source?: string };
}

export interface Gauge {
  readonly id: string;
  readonly kind: "compression" | "leak-down";
  readonly unit?: PressureUnit;
  readonly fullScale?: GaugePressure;
  /** Accuracy class, percent of full scale. */
  readonly classPercent?: number;
  /** Smallest division [Pa]. */
  readonly division?: GaugePressure;
  readonly dial?: "pressure" | "percent-lost" | "percent-held";
  readonly restrictor?: Length;
  readonly note?: string;
}

/** One cell of a row of readings. */
export type Cell =
  | { readonly kind: "not-taken" }
  /** A gauge pressure, or for leak-down in percent the fraction lost. */
  | {
      readonly kind: "reading";
      readonly value: number;
      readonly doubtful: boolean;
      readonly pegged: boolean;
      readonly text: string;
    };

export type PressureKind = "dry" | "wet" | "first-stroke" | "running" | "snap-throttle";
export type LeakKind = "leak-down" | "leak-down-oiled" | "leak-down-lower";

/** One row of tests.csv that holds pressures: a cell a cylinder, in the engine's order. */
export interface PressureRow {
  readonly what: PressureKind | LeakKind;
  readonly take: number;
  readonly gauge?: string;
  /** The unit as written; `%` rows hold the fraction lost. */
  readonly unit: PressureUnit | "%";
  /** What the cells mean: gauge pressure [Pa] or fraction lost. */
  readonly holds: "pressure" | "lost";
  readonly cells: readonly Cell[];
  readonly line: number;
}

export type HeardPlace =
  "intake" | "exhaust" | "crankcase" | "coolant" | "neighbour" | "plug" | "outside" | "none";
export interface Heard {
  readonly place: HeardPlace;
  readonly faint: boolean;
  readonly neighbour?: string;
}

/** Facts of the day that hold for the whole test; absent = not recorded. */
export interface Conditions {
  readonly altitude?: Length;
  readonly altitudeFrom?: "test" | "engine" | "logbook";
  readonly stationPressure?: AbsolutePressure;
  readonly qnh?: AbsolutePressure;
  readonly airTemperature?: Temperature;
  readonly crankSpeed?: Speed;
  readonly crankVolts?: number;
  readonly strokes?: number;
  readonly engineTemp?: "warm" | "part-warm" | "cold";
  readonly engineTemperature?: Temperature;
  readonly throttle?: "open" | "closed";
  readonly plugsOut?: "all" | "one";
  readonly release?: "active" | "defeated";
  readonly regulated?: GaugePressure;
  readonly master?: GaugePressure;
  /** Master reading of a percent dial, as fraction lost. */
  readonly masterLost?: number;
}

/** Facts that differ by cylinder, in the engine's order. */
export interface PerCylinder {
  readonly oil?: readonly (Volume | undefined)[];
  readonly regulated?: readonly (GaugePressure | undefined)[];
  readonly speed?: readonly (Speed | undefined)[];
  readonly strokes?: readonly (number | undefined)[];
  readonly order?: readonly (number | undefined)[];
}

export interface Test {
  readonly id: string;
  readonly date: IsoDate;
  readonly meter?: number;
  readonly rows: readonly PressureRow[];
  readonly heard?: readonly (readonly Heard[] | undefined)[];
  readonly perCylinder: PerCylinder;
  readonly conditions: Conditions;
  readonly by?: string;
  readonly setAside?: string;
  readonly notes: readonly string[];
}

export type Work =
  | "valve job"
  | "head gasket"
  | "head off"
  | "re-ring"
  | "rebore"
  | "rebuild"
  | "valve lash"
  | "timing drive"
  | "plugs"
  | "oil change"
  | "additive"
  | "storage"
  | "overheated"
  | "flooded"
  | "over-rev"
  | "water drawn in"
  | "meter replaced"
  | "other";

export interface Service {
  readonly date: IsoDate;
  readonly meter?: number;
  readonly what: Work;
  /** Labels of the cylinders touched. */
  readonly cylinders: readonly string[];
  /** Labels of the cylinders whose history starts anew. */
  readonly newBaseline: readonly string[];
  readonly by?: string;
  readonly note?: string;
}

export interface Note {
  readonly date: IsoDate;
  readonly meter?: number;
  readonly what: string;
  readonly value?: string;
  readonly unit?: string;
  readonly cylinders: readonly string[];
  readonly by?: string;
  readonly note?: string;
}

/** Everything of one engine, read and checked. */
export interface EngineRecord {
  readonly engine: Engine;
  readonly gauges: readonly Gauge[];
  readonly tests: readonly Test[];
  readonly services: readonly Service[];
  readonly notes: readonly Note[];
}
