// What engine.json says of an engine, as plain values. SI inside.

import type { Angle, GaugePressure, Length, Speed, Volume } from "../quantity/index.ts";
import type { ClearanceLimit, CrankLayout, OfferedPart, OfferedSizes } from "./measurement-types.ts";
import type { EnginePrices, OwnedFor } from "./price-types.ts";

/** What an engine does for a living; an aircraft's has rules of its own. */
export type Use = "road" | "farm" | "stationary" | "boat" | "motorcycle" | "aircraft" | "other";
/** How the mixture is lit; unknown where nobody said. */
export type Ignition = "spark" | "compression" | "unknown";
/** What the meter of an engine counts. */
export type MeterUnit = "h" | "km" | "mi";

/** The maker's figures for the cranking reading [Pa above the air around the gauge], as the manual prints them. */
export interface CompressionLimits {
  readonly new?: GaugePressure;
  readonly minimum?: GaugePressure;
  /** Largest difference between two cylinders [Pa]. */
  readonly difference?: GaugePressure;
  /** Least lowest/highest, a fraction. */
  readonly lowestToHighest?: number;
  /** That the maker's figures are for; of a range its geometric middle. */
  readonly speed?: Speed;
  /** The range as it was written; absent where one speed was. */
  readonly speedRange?: string;
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

/** What engine.json says of an engine: its layout, its sizes, the maker's limits, prices and ownership. SI inside. */
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
  /** Where it is not stated: valves in a four-stroke, ports in a two-stroke, of which no more is then claimed. */
  readonly porting: "valves" | "ports" | "ports-and-exhaust-valve";
  readonly ignition: Ignition;
  readonly cooling?: "liquid" | "air";
  readonly meter?: MeterUnit;
  readonly homeAltitude?: Length;
  readonly compressionRelease: "none" | "automatic" | "manual" | "unknown";
  readonly wetTest?: { readonly allowed: boolean; readonly oil?: Volume; readonly source?: string };
  /** Not allowed: the maker forbids it, or nothing holds the crank against the air. */
  readonly leakDownTest?: { readonly allowed: boolean; readonly source?: string };
  readonly geometry: Geometry;
  readonly crankingCurves: readonly CrankingCurve[];
  readonly correction: CorrectionChoice;
  readonly compressionLimits: CompressionLimits;
  readonly leakDownLimits: { readonly lost?: number; readonly source?: string };
  /** The maker's limits for parts, as limits.clearances lists them. */
  readonly clearances: readonly ClearanceLimit[];
  /** Sizes that the maker offers parts in. */
  readonly offered: Readonly<Partial<Record<OfferedPart, OfferedSizes>>>;
  readonly layout: CrankLayout;
  readonly prices?: EnginePrices;
  readonly ownedFor?: OwnedFor;
  /** When it was new, or its rings were: a year or an ISO date. */
  readonly renewed?: string;
  /** Years until the rings need work, as its owner judges. */
  readonly yearsLeft?: number;
}
