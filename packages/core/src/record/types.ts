// What the logbook holds, as plain values: engines, gauges, tests, services, notes. SI inside.

import type {
  AbsolutePressure,
  Angle,
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

/** Sizes of one cylinder; what is not known is absent. */
export interface Geometry {
  readonly bore?: Length;
  readonly stroke?: Length;
  /** Centre to centre. */
  readonly rod?: Length;
  readonly compressionRatio?: number;
  /** Of the crank after bottom dead centre, at the seat. */
  readonly intakeCloses?: Angle;
}

/** The reading that this engine would give on one gauge without losses, as a calibration at two speeds found it. */
export interface CrankingCurve {
  /** Absent: for any gauge. */
  readonly gauge?: string;
  /** In reference air. */
  readonly P0: GaugePressure;
  /** Standard uncertainty of ln P0. */
  readonly uncertainty: number;
  readonly source?: string;
}

/** How readings of this engine are brought to reference air, where the owner chose. */
export interface CorrectionChoice {
  readonly basis?: "pressure" | "density";
  /** x of (T/T_ref)^x, 0 to 1. */
  readonly temperatureExponent?: number;
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
  readonly geometry: Geometry;
  readonly crankingCurves: readonly CrankingCurve[];
  readonly correction: CorrectionChoice;
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
  /** How much it reads too high, everywhere on its scale. */
  readonly readsHigh?: GaugePressure;
  /** Where its check valve sits: at the plug the hose is outside the chamber, at the gauge it is part of it. */
  readonly valveEnd?: "plug" | "gauge";
  readonly hose?: Volume;
  readonly dial?: "pressure" | "percent-lost" | "percent-held";
  /** Bore of the restrictor of a leak-down tester; absent = not known, and never guessed. */
  readonly restrictor?: Length;
  /** Half-width of what is known of the bore. */
  readonly restrictorTolerance?: Length;
  readonly restrictorLength?: Length;
  readonly profile?: RestrictorProfile;
  /** Discharge coefficient, where it was measured. */
  readonly restrictorCd?: number;
  /** The supply pressure it is set to. */
  readonly regulated?: GaugePressure;
  /** Both dials agree with the valve shut. */
  readonly matched?: boolean;
  /** What it read with open holes of known size on its hose. */
  readonly knownHoles?: readonly KnownHole[];
  /** How it stands to another gauge, measured side by side on one warm engine. */
  readonly link?: GaugeLink;
  readonly note?: string;
}

/** `thin-plate`: a hole in a sheet thinner than the hole is wide. */
export type RestrictorProfile = "coned" | "square" | "thin-plate" | "unknown";

export interface KnownHole {
  readonly hole: Length;
  /** Gauge pressure [Pa], or the fraction lost, as `holds` says. */
  readonly reads: number;
  readonly holds: "pressure" | "lost";
}

export interface GaugeLink {
  /** The gauge it was compared with. */
  readonly to: string;
  /** Compression: reading of this gauge / reading of the other. Leak-down: leak by this one / leak by the other, in alpha. */
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
  readonly date: IsoDate;
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
