// Sentences for faults in gauges.csv.

import { nearest } from "../nearest.ts";
import { listed, quoted } from "./print.ts";

/** Why a gauge cannot be linked to another. */
export type LinkFault = "itself" | "not-there" | "other-kind" | "in-a-circle";

const linkWhy: Readonly<Record<LinkFault, string>> = {
  itself: "is the gauge itself",
  "not-there": "is no gauge of this file",
  "other-kind": "measures something else: a compression gauge against a leak-down tester",
  "in-a-circle": "leads back to the gauge it began at",
};

export const gaugeWords = {
  "gauge-twice": ({ gauge, line }: { gauge: string; line: number }) => ({
    found: `the gauge ${quoted(gauge)} stands on line ${String(line)} already`,
    expected: "each gauge once",
    mend: "rename or delete one of the two",
  }),
  "known-hole-bad": ({ text }: { text: string }) => ({
    found: `${quoted(text)} is no hole with what it read`,
    expected: "holes of 0.1 to 10 mm, each with its reading: 0.80mm:74psi 1.00mm:66psi; in percent 1.0mm:35%",
    mend: "sealtrend gauge calibrate NAME --hole 1.0mm --reads 66psi writes it",
  }),
  "link-partial": ({ missing }: { missing: readonly string[] }) => ({
    found: `the link to another gauge lacks ${listed(missing)}`,
    expected: "link_to, link_factor, link_u and link_date, or none of them",
    mend: "fill in what is missing, or empty all four; sealtrend gauge compare writes them",
  }),
  "link-bad": ({ to, why, gauges }: { to: string; why: LinkFault; gauges: readonly string[] }) => {
    const near = why === "not-there" ? nearest(to, gauges)[0] : undefined;
    return {
      found: `link_to ${quoted(to)} ${linkWhy[why]}`,
      expected: "another gauge of this file, of the same kind, whose own links do not lead back",
      mend:
        near === undefined
          ? "name the gauge it was compared with, or empty the four link cells"
          : `write ${near}`,
    };
  },
} as const;
