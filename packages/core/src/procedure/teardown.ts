// Measuring an opened engine, so that the sheet can go to the machine shop.

import { injection, licensed, makerFirst } from "./cautions.ts";
import { type Sheet, commonPractice, judgement, liquidCooled, several, single, twoStroke } from "./line.ts";

export const teardown: Sheet = {
  name: "Teardown measurements",
  before: [
    makerFirst,
    {
      text: "Not for one odd test: repeat it, and leak-down first.",
      source: "trade: AOPA 2016, OnAllCylinders 2018; judgement of this project",
    },
    { text: "Mark caps, rods and places; photograph; keep what sits together.", source: commonPractice },
    {
      text: "Parts clean, dry, and at the same heat as the micrometer.",
      source: "computed by this project (90 mm piston, 10 K: 0.010 mm)",
    },
    {
      text: "Ridge felt by the nail: ream it before the pistons come up.",
      source: commonPractice,
      when: (s) => !twoStroke(s),
    },
  ],
  steps: [
    {
      text: "Bore: top, middle, bottom of ring travel; along and across the crank.",
      source: "TM and maker sheets; Onan, GM",
    },
    {
      text: "Ring gap at the lowest place of the bore; groove clearance in 4 places.",
      source: "TM 10-3930-653 (smallest place, the bottom)",
    },
    {
      text: "Piston at the height the maker names, 90 degrees to the pin.",
      source: "Honda, GM (heights differ)",
    },
    {
      text: "Port edges and exhaust valves too, where there are any.",
      source: commonPractice,
      when: twoStroke,
    },
    {
      text: "Each main and pin: 2 places along, 2 angles. End play of the crank.",
      source: "TM overhaul sheets",
    },
    {
      text: "Gauging thread: dry, full torque, shaft not turned, widest place.",
      source: "Kia, Mitsubishi, Deere manuals",
    },
    {
      text: "Head and block face: edges, middle and both diagonals, straightedge.",
      source: "Ford (straightedge); diagonals: computed by this project",
    },
    { text: "Look: crosshatch, scores, bearing shells; photograph them.", source: commonPractice },
    {
      text: ({ engine }) => `A line a part, bore 3: 86.62 86.58 …: sealtrend teardown ${engine.id}`,
      source: "this tool",
    },
  ],
  cautions: [
    licensed,
    {
      text: "Air for cleaning: 30 psi at most, goggles, never at people.",
      source: "29 CFR 1910.242(b), 1917.154",
    },
    {
      text: "Drain coolant and oil cold; lift heavy parts with a hoist.",
      source: commonPractice,
      when: liquidCooled,
    },
    {
      text: "Lift heavy parts with a hoist; springs under load fly.",
      source: commonPractice,
      when: (s) => !liquidCooled(s),
    },
    { ...injection, text: "Fuel under pressure cuts skin: let it down first." },
  ],
  voids: [
    {
      text: "caps mixed or not at torque; thread turned; caliper in a bore",
      source: "common practice; caliper too coarse: DIN 862 table",
    },
    { text: "one cylinder measured and the others guessed", source: judgement, when: several },
    { text: "one level of the bore only: taper stays hidden", source: judgement, when: single },
  ],
};
