// Rows that the running engine speaks in: oil, blow-by, pressure, debris, noise, coolant. Points are judgement; a status
// is that of the condition. Oil use and blow-by follow the rings, but neither tells where.

import type { LadderRow } from "./row.ts";

/** @source handbook/decision.md 2 */
export const rowsOfRunning = {
  C0: {
    line: "oil use",
    points: { rings: 2 },
    when: "four times its own baseline or more",
    status: "published",
    source: "Caterpillar G3500 manual SEBU6711",
  },
  C1: {
    line: "oil use",
    points: { rings: 2 },
    when: "three times its own baseline or more",
    status: "published",
    source: "Caterpillar 3412C manual",
  },
  C2: {
    line: "oil use",
    points: { rings: 1 },
    when: "1.5 to 3 times its own baseline, or 0.9 L per 3200 km or more",
    status: "published",
    source: "Westerbeke manual (150 %); Saturn VUE 2003 (0.9 L in 3200 km)",
  },
  C3: {
    line: "oil use",
    points: { rings: -1 },
    when: "steady, below 1.5 times, no leak outside topped up unseen",
    status: "judgement",
    source: "judgement of this tool",
  },
  C4: {
    line: "oil use",
    points: { top: 1 },
    when: "raised while the leak-down is healthy: guides, seals",
    status: "common practice",
    source: "common practice, no source",
  },
  D1: {
    line: "blow-by",
    points: { rings: 2 },
    when: "three times its baseline or more, or above 2 ft3/h per hp, breather clear",
    status: "published",
    source: "Caterpillar G3500 manual SEBU6711 (three times); Caterpillar 3116 manual (2 ft3/h per hp)",
  },
  D2: {
    line: "blow-by",
    points: { rings: -1 },
    when: "normal",
    status: "judgement",
    source: "judgement of this tool",
  },
  E1: {
    line: "oil pressure",
    points: { bottom: 2 },
    when: "hot, below the maker's minimum, on a proved gauge, right oil; pump and relief valve do it too",
    status: "published",
    source: "a study guide (pressure falls as bearing clearance grows); the limit is the engine maker's own",
  },
  E2: {
    line: "oil pressure",
    points: { bottom: -1 },
    when: "hot, inside limits",
    status: "judgement",
    source: "judgement of this tool",
  },
  F1: {
    line: "debris",
    points: { bottom: 2 },
    when: "bearing metal in the filter, or copper, lead or tin rising",
    status: "published",
    source: "Machinery Lubrication; Caterpillar",
  },
  F2: {
    line: "debris",
    points: { rings: 1 },
    when: "iron or chromium rising; it can fall when bores polish",
    status: "published",
    source: "Machinery Lubrication; Caterpillar",
  },
  F3: {
    line: "debris",
    points: { bore: 1, bottom: 3 },
    when: "chunks of iron or of piston metal: stop the engine",
    status: "common practice",
    source: "common practice, no source",
  },
  F4: {
    line: "debris",
    points: { bottom: -1 },
    when: "clean filter, flat oil analysis",
    status: "judgement",
    source: "judgement of this tool",
  },
  G1: {
    line: "noise",
    points: { bottom: 2 },
    when: "heavy knock under load that changes when that cylinder is cut out",
    status: "common practice",
    source: "common practice, no source",
  },
  G2: {
    line: "noise",
    points: { bore: 1 },
    when: "piston slap when warm",
    status: "common practice",
    source: "common practice, no source",
  },
  H1: {
    line: "coolant",
    points: { top: 1 },
    when: "lost, nobody knows where to",
    status: "published",
    source: "GM head gasket bulletin of 1992",
  },
  H2: {
    line: "coolant",
    points: { top: 3 },
    when: "combustion gas proved in it",
    status: "common practice",
    source: "common practice, no source",
  },
  H3: {
    line: "coolant",
    points: { top: -1 },
    when: "none lost, and no air at a valve in the leak-down: it speaks against gasket and crack alone",
    status: "common practice",
    source: "common practice, no source",
  },
} as const satisfies Readonly<Record<string, LadderRow>>;
