// Rows of parts seen and parts measured. Points are judgement; a status is that of the condition.

import type { LadderRow } from "./row.ts";

/** @source handbook/decision.md 2 */
export const rowsOfParts = {
  I1: {
    line: "sight",
    points: { top: 3 },
    when: "burnt or leaking valve seen",
    status: "published",
    source: "Kitplanes, handbook/trade.md J3",
  },
  I2: {
    line: "sight",
    points: { bore: 2 },
    when: "scored bore, damaged crown",
    status: "common practice",
    source: "handbook/decision.md 2",
  },
  I3: {
    line: "sight",
    points: { rings: 1 },
    when: "hone marks gone over the whole stroke",
    status: "common practice",
    source: "handbook/decision.md 2",
  },
  I4: {
    line: "sight",
    points: { bore: -2 },
    when: "bores clean, hone marks there; says nothing about ring tension, groove wear or bearings",
    status: "common practice",
    source: "handbook/decision.md 2",
  },
  J1: {
    line: "measured",
    points: { bore: 4 },
    when: "taper, out-of-round or clearance beyond the maker's limit",
    status: "published",
    source: "handbook/trade.md E1, E2",
  },
  J2: {
    line: "measured",
    points: { bore: -3 },
    when: "taper, out-of-round and clearance inside the maker's limit",
    status: "published",
    source: "handbook/trade.md E1, E2",
  },
  J3: {
    line: "measured",
    points: { rings: 3 },
    when: "ring gap (lowest part of the bore) or groove clearance beyond the service limit",
    status: "published",
    source: "TM 10-3930-653-14&P",
  },
  J4: {
    line: "measured",
    points: { rings: -2 },
    when: "ring gap and groove clearance inside the service limit",
    status: "published",
    source: "TM 10-3930-653-14&P",
  },
  J5: {
    line: "measured",
    points: { bottom: 4 },
    when: "bearing clearance or journal beyond the limit",
    status: "published",
    source: "handbook/trade.md E2",
  },
  J6: {
    line: "measured",
    points: { bottom: -3 },
    when: "bearing clearance and journals inside the limit",
    status: "published",
    source: "handbook/trade.md E2",
  },
  J7: {
    line: "measured",
    points: { top: 3 },
    when: "seat, guide or flatness beyond the limit",
    status: "published",
    source: "handbook/trade.md E2",
  },
} as const satisfies Readonly<Record<string, LadderRow>>;
