// Rows of parts seen and parts measured. Points are judgement; a status is that of the condition.

import type { LadderRow } from "./row.ts";

/** @source handbook/decision.md 2 */
export const rowsOfParts = {
  I1: {
    line: "sight",
    points: { top: 3 },
    when: "burnt or leaking valve seen",
    status: "published",
    source: "Kitplanes, Low Compression (36 of 80, and an exhaust valve about to fail in the borescope)",
  },
  I2: {
    line: "sight",
    points: { bore: 2 },
    when: "scored bore, damaged crown",
    status: "common practice",
    source: "common practice, no source",
  },
  I3: {
    line: "sight",
    points: { rings: 1 },
    when: "hone marks gone over the whole stroke",
    status: "common practice",
    source: "common practice, no source",
  },
  I4: {
    line: "sight",
    points: { bore: -2 },
    when: "bores clean, hone marks there; says nothing about ring tension, groove wear or bearings",
    status: "common practice",
    source: "common practice, no source",
  },
  J1: {
    line: "measured",
    points: { bore: 4 },
    when: "taper, out-of-round or clearance beyond the maker's limit",
    status: "published",
    source: "TM 10-3930-647-14&P; GM Aurora 4.0 and Suzuki manuals (0.10 mm); the engine's own manual wins",
  },
  J2: {
    line: "measured",
    points: { bore: -3 },
    when: "taper, out-of-round and clearance inside the maker's limit",
    status: "published",
    source: "TM 10-3930-647-14&P; GM Aurora 4.0 and Suzuki manuals (0.10 mm); the engine's own manual wins",
  },
  J3: {
    line: "measured",
    points: { rings: 3 },
    when: "ring gap (lowest part of the bore) or groove clearance beyond the service limit",
    status: "published",
    source: "TM 10-3930-653-14&P (ring gap 1.0 mm, side clearance 0.10 mm)",
  },
  J4: {
    line: "measured",
    points: { rings: -2 },
    when: "ring gap and groove clearance inside the service limit",
    status: "published",
    source: "TM 10-3930-653-14&P (ring gap 1.0 mm, side clearance 0.10 mm)",
  },
  J5: {
    line: "measured",
    points: { bottom: 4 },
    when: "bearing clearance or journal beyond the limit",
    status: "published",
    source: "TM 10-3930-647-14&P; TM 5-3895-346-14; the engine's own manual wins",
  },
  J6: {
    line: "measured",
    points: { bottom: -3 },
    when: "bearing clearance and journals inside the limit",
    status: "published",
    source: "TM 10-3930-647-14&P; TM 5-3895-346-14; the engine's own manual wins",
  },
  J7: {
    line: "measured",
    points: { top: 3 },
    when: "seat, guide or flatness beyond the limit",
    status: "published",
    source:
      "Caterpillar 3306 manual and TM 5-3820-256-24-5 (flatness); seats and guides by the engine's own manual",
  },
} as const satisfies Readonly<Record<string, LadderRow>>;
