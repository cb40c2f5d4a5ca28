// Sentences for faults in gauges.csv.

import { nearest } from "../nearest.ts";
import { type HolesFault, type Misfit, holesWords, misfitWords } from "./gauge-misfits.ts";
import { listed, quoted } from "./print.ts";

/** Why a gauge cannot be linked to another. */
export type LinkFault = "itself" | "not-there" | "other-kind" | "in-a-circle";

const linkWhy: Readonly<Record<LinkFault, string>> = {
  itself: "is the gauge itself",
  "not-there": "is no gauge of this file",
  "other-kind": "measures something else: a compression gauge against a leak-down tester",
  "in-a-circle": "leads back to the gauge it began at",
};

type GaugeKind = "compression" | "leak-down";
const namesOf: Readonly<Record<GaugeKind, string>> = {
  compression: "compression gauge",
  "leak-down": "leak-down tester",
};

export const gaugeWords = {
  "gauge-twice": ({ gauge, line }: { gauge: string; line: number }) => ({
    found: `the gauge ${quoted(gauge)} stands on line ${String(line)} already`,
    expected: "each gauge once",
    mend: "rename or delete one of the two",
  }),
  "known-hole-bad": ({ text, mended }: { text: string; mended: string | undefined }) => ({
    found: `${quoted(text)} is no hole with what it read`,
    expected: "holes of 0.1 to 10 mm, each with its reading: 0.80mm:74psi 1.00mm:66psi; in percent 1.0mm:35%",
    mend:
      mended === undefined
        ? "write size and reading with a colon and no blank between, a blank between the holes, or empty the cell"
        : `write ${mended} if that is meant`,
  }),
  "known-holes-contradict": ({ why, hole, other = "" }: HolesFault) => holesWords[why](hole, other),
  "gauge-misfit": ({ why, value, other = "" }: { why: Misfit; value: string; other?: string }) =>
    misfitWords[why](value, other),
  "gauge-other-kind": ({ column, kind, other }: { column: string; kind: GaugeKind; other: GaugeKind }) => ({
    found: `${column} belongs to a ${namesOf[other]}, and this is a ${namesOf[kind]}: not used`,
    expected: `${column} empty, or ${other} in the column kind`,
    mend: `empty ${column}, or write ${other} in the column kind if it is one`,
  }),
  "link-partial": ({ missing }: { missing: readonly string[] }) => ({
    found: `the link to another gauge lacks ${listed(missing)}`,
    expected: "link_to, link_factor, link_u and link_date, or none of them",
    mend: "fill in what is missing, or empty all four and write them with sealtrend gauge compare",
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
