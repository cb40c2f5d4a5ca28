// Rows that the sealing tests of this library speak in. Points are judgement; a status is that of the condition.

import type { LadderRow } from "./row.ts";

/** @source handbook/decision.md 2 */
export const rowsOfTests = {
  A1: {
    line: "cranking",
    points: { top: -1, rings: -1 },
    when: "every cylinder at 85 % of its own baseline or more, spread rule met, none lagging",
    status: "judgement",
    source: "handbook/trade.md F2",
  },
  A2: {
    line: "cranking",
    points: { top: 1, rings: 1 },
    when: "a cylinder lagging, or a spread rule not met",
    status: "judgement",
    source: "handbook/statistics.md L.8",
  },
  A3: {
    line: "cranking",
    points: { top: -1, rings: 1 },
    when: "oil raises the reading by 10 to 25 %, net of the control",
    status: "published",
    source:
      "10 % or more tells of rings: maker's reprint of 1997 (handbook/trade.md B3); net of control judged",
  },
  A4: {
    line: "cranking",
    points: { top: -1, rings: 2 },
    when: "oil raises the reading by more than 25 %, net of the control",
    status: "published",
    source: "20 to 25 % or more: handbook/trade.md B3",
  },
  A5: {
    line: "cranking",
    points: { top: 1, rings: -1 },
    when: "oil raises a low cylinder by less than 5 %, net of the control",
    status: "published",
    source: "handbook/trade.md B3; the 5 % judged",
  },
  A6: {
    line: "cranking",
    points: { top: 2, rings: -1 },
    when: "two neighbours on one gasket low, oil does not help",
    status: "published",
    source: "workshop manuals of several makers, handbook/trade.md C1",
  },
  A7: {
    line: "cranking",
    points: { rings: 2 },
    when: "all below the maker's minimum in two trusted tests or more, or the engine 20 % below its baseline",
    status: "published",
    source: "Caterpillar SEBU6711; Suzuki GSF600 manual",
  },
  A8: {
    line: "cranking",
    points: { top: 1, rings: 1 },
    when: "alarm of the history, or the engine as a whole falls at 5 %",
    status: "judgement",
    source: "handbook/statistics.md C.4",
  },
  B1: {
    line: "leak-down",
    points: { top: -2, rings: -2 },
    when: "leak inside the healthy band of that tester, nothing heard but a faint hiss at the crankcase",
    status: "published",
    source: "handbook/trade.md B5; it may miss what cranking sees",
  },
  B2: {
    line: "leak-down",
    points: { top: 3, rings: -1 },
    when: "above the limit, air at exhaust or intake",
    status: "published",
    source: "handbook/trade.md C2",
  },
  B3: {
    line: "leak-down",
    points: { top: 3, rings: -1 },
    when: "above the limit, air at a neighbour (checked at another position) or bubbles in the coolant",
    status: "published",
    source: "handbook/trade.md C2",
  },
  B4: {
    line: "leak-down",
    points: { top: -1, rings: 2 },
    when: "above the limit, air at the crankcase",
    status: "published",
    source: "handbook/trade.md C2",
  },
  B5: {
    line: "leak-down",
    points: { top: -1, rings: 3 },
    when: "above the limit at the crankcase, and oil takes a third of the leak's area or more",
    status: "published",
    source: "Vehicle Service Pros 2012; the third judged",
  },
  B6: {
    line: "leak-down",
    points: { top: -1, bore: 2 },
    when: "above the limit at the crankcase, the same with oil",
    status: "published",
    source: "Vehicle Service Pros 2012",
  },
  B7: {
    line: "leak-down",
    points: { bore: 1 },
    when: "above the limit at the crankcase, less with the piston lower",
    status: "published",
    source: "Vehicle Service Pros 2012",
  },
  B8: {
    line: "leak-down",
    points: {},
    when: "between the healthy band and the limit, a faint hiss at the crankcase",
    status: "published",
    source: "a hiss at 78 of 80 is normal: GA News 2020",
  },
} as const satisfies Readonly<Record<string, LadderRow>>;
