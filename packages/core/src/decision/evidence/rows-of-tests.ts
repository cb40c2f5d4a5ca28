// Rows that the sealing tests of this library speak in. Points are judgement; a status is that of the condition.

import type { LadderRow } from "./row.ts";

/** @source handbook/decision.md 2 */
export const rowsOfTests = {
  A1: {
    line: "cranking",
    points: { top: -1, rings: -1 },
    when: "every cylinder at 85 % of its own baseline or more, spread rule met, none suspect or lagging, no fall over the years",
    status: "judgement",
    source: "judgement of this tool",
  },
  A2: {
    line: "cranking",
    points: { top: 1, rings: 1 },
    when: "a cylinder lagging, or a spread rule not met",
    status: "judgement",
    source: "judgement of this tool",
  },
  A3: {
    line: "cranking",
    points: { top: -1, rings: 1 },
    when: "oil raises the reading by 10 to 25 %, net of the control",
    status: "published",
    source:
      "Ford Probe 1997 reprint (10 % or more tells of rings); net of a control is judgement of this tool",
  },
  A4: {
    line: "cranking",
    points: { top: -1, rings: 2 },
    when: "oil raises the reading by more than 25 %, net of the control",
    status: "published",
    source:
      "Volvo owners' forum (20 to 25 % or more tells of rings or bores); net of a control is judgement of this tool",
  },
  A5: {
    line: "cranking",
    points: { top: 1, rings: -1 },
    when: "oil raises a low cylinder by less than 5 %, net of the control",
    status: "published",
    source:
      "TM 10-3930-647-14&P and Ford Probe 1997 reprint (no change tells of valves); the 5 % is judgement of this tool",
  },
  A6: {
    line: "cranking",
    points: { top: 2, rings: -1 },
    when: "two neighbours on one gasket low, oil does not help",
    status: "published",
    source: "service information of GM and Ford, manuals of Mazda, TM 5-4210-230-14&P-1",
  },
  A7: {
    line: "cranking",
    points: { rings: 2 },
    when: "all below the maker's minimum in two trusted tests or more, or the engine 20 % below its baseline",
    status: "published",
    source:
      "Caterpillar G3500 manual SEBU6711 (20 % below the baseline); Suzuki GSF600 service manual (all below)",
  },
  A8: {
    line: "cranking",
    points: { top: 1, rings: 1 },
    when: "alarm of the history, or the engine as a whole falls at 5 %",
    status: "judgement",
    source: "judgement of this tool",
  },
  B1: {
    line: "leak-down",
    points: { top: -2, rings: -2 },
    when: "leak inside the healthy band of that tester, nothing heard but a faint hiss at the crankcase; it may miss what cranking sees",
    status: "published",
    source:
      "IOL Motoring (5 to 10 % lost is top condition); General Aviation News 2020 (a faint hiss is normal)",
  },
  B2: {
    line: "leak-down",
    points: { top: 3, rings: -1 },
    when: "above the limit, air at exhaust or intake",
    status: "published",
    source:
      "service information of GM, Dodge 3.9 and Mazda B2300; limits: Mazda B2300 2008 (20 %), AC 43.13-1B (25 %)",
  },
  B3: {
    line: "leak-down",
    points: { top: 3, rings: -1 },
    when: "above the limit, air at a neighbour (checked at another position) or bubbles in the coolant",
    status: "published",
    source:
      "service information of GM and Mazda B2300, Sea-Doo 1503 manual; to check the neighbour at another position: a thread in an oil forum",
  },
  B4: {
    line: "leak-down",
    points: { top: -1, rings: 2 },
    when: "above the limit, air at the crankcase",
    status: "published",
    source: "service information of GM and Mazda B2300; Vehicle Service Pros 2012",
  },
  B5: {
    line: "leak-down",
    points: { top: -1, rings: 3 },
    when: "above the limit at the crankcase, and oil takes a third of the leak's area or more",
    status: "published",
    source: "Vehicle Service Pros 2012; the third is judgement of this tool",
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
    source: "General Aviation News 2020 (a faint hiss at 78 of 80 is normal)",
  },
} as const satisfies Readonly<Record<string, LadderRow>>;
