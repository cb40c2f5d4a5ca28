// What gauges.csv says of a gauge or leak-down tester, as plain values. SI inside.

import type { RestrictorProfile } from "../leakdown/index.ts";
import type { GaugePressure, Length, PressureUnit, Volume } from "../quantity/index.ts";
import type { IsoDate } from "./iso-date.ts";

/** A compression gauge or leak-down tester, as gauges.csv describes it. SI inside. */
export interface Gauge {
  readonly id: string;
  readonly kind: "compression" | "leak-down";
  readonly unit?: PressureUnit;
  readonly fullScale?: GaugePressure;
  /** Accuracy class, percent of full scale. */
  readonly classPercent?: number;
  /** Smallest division [Pa]. */
  readonly division?: GaugePressure;
  /** How much it reads too high, everywhere on its scale; of a leak-down tester the dial at the cylinder. */
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

/** What a leak-down tester read with an open hole of known size. */
export interface KnownHole {
  /** As written: `1.0mm:55psi`. */
  readonly text: string;
  readonly hole: Length;
  /** Gauge pressure [Pa], or the fraction lost, as `holds` says. */
  readonly reads: number;
  readonly holds: "pressure" | "lost";
}

/** How readings of one gauge stand to those of another, from one comparison. */
export interface GaugeLink {
  /** The gauge it was compared with. */
  readonly to: string;
  /** Compression: reading of this gauge / reading of the other. Leak-down: leak by this one / leak by the other, in alpha. */
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
  readonly date: IsoDate;
}
