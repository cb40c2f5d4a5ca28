// What the logbook holds, as plain values: tests, services, notes, and all of one engine. SI inside.

import type {
  AbsolutePressure,
  GaugePressure,
  Length,
  PressureUnit,
  Speed,
  Temperature,
  Volume,
} from "../quantity/index.ts";
import type { Engine } from "./engine-types.ts";
import type { Gauge } from "./gauge-types.ts";
import type { IsoDate } from "./iso-date.ts";
import type { Measurement } from "./measurement-types.ts";

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

/** Readings in the unit of a pressure gauge, by how they are taken. */
export type PressureKind = "dry" | "wet" | "first-stroke" | "running" | "snap-throttle";
/** Leak-down readings: as the bore stands at its top, with oil, and with the piston lower. */
export type LeakKind = "leak-down" | "leak-down-oiled" | "leak-down-lower";

/** One row of tests.csv that holds pressures: a cell a cylinder, in the engine's order. */
export interface PressureRow {
  readonly what: PressureKind | LeakKind;
  /** From 1; rows of one test, kind and gauge with other takes are repeats. */
  readonly take: number;
  readonly gauge?: string;
  /** The unit as written; `%` rows hold the fraction lost. */
  readonly unit: PressureUnit | "%";
  /** What the cells mean: gauge pressure [Pa] or fraction lost. */
  readonly holds: "pressure" | "lost";
  /** As read: what its gauge is known to read too high is still in them. */
  readonly cells: readonly Cell[];
  /** What its gauge reads too high, by gauges.csv; rows of pressures only. */
  readonly readsHigh?: GaugePressure;
  readonly line: number;
}

/** Where air was heard to escape in a leak-down test. */
export type HeardPlace =
  "intake" | "exhaust" | "crankcase" | "coolant" | "neighbour" | "plug" | "outside" | "none";
/** Air that was heard to escape: where, how loud, and into which neighbour. */
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
  /** At the battery while cranking [V]. */
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

/** One test of the logbook: its rows, its day, and whether its owner set it aside. */
export interface Test {
  readonly id: string;
  readonly date: IsoDate;
  /** In the unit of the engine's meter, as in services and notes. */
  readonly meter?: number;
  readonly rows: readonly PressureRow[];
  readonly heard?: readonly (readonly Heard[] | undefined)[];
  readonly perCylinder: PerCylinder;
  readonly conditions: Conditions;
  /** Where rows of two gauges state different facts of the day: those of each gauge, by its name. */
  readonly byGauge?: Readonly<Record<string, Conditions>>;
  readonly by?: string;
  readonly setAside?: string;
  readonly notes: readonly string[];
}

/** What may be done to an engine, by the words it is recorded under. */
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

/** A piece of work on an engine, and the cylinders whose history starts anew with it. */
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

/** Other evidence of the logbook, such as oil use or a noise, as it was written. */
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
  readonly measurements: readonly Measurement[];
  /** What the owner has beside the gauges; absent: nobody wrote it down. */
  readonly tools?: readonly Tool[];
}

/** Beside the gauges and testers of gauges.csv. */
export type Tool = "borescope" | "coolant tester";
