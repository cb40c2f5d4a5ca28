// The worked examples W1 to W10 of handbook/diagnosis.md 7 as printed there: inputs invented, results computed in the
// handbook by its own reference program, no published value.

import { expect } from "vitest";
import type { Written } from "./worked-evidence.ts";

/** To the third printed digit, with a tenth of it for what it was rounded from. */
export const near = (value: number, within = 0.0006): unknown =>
  expect.toSatisfy((other: number) => Math.abs(other - value) <= within, `${value} to the printed digit`);

const onOne = [150, 152, 110, 149];
const oil = [0.05, 8.5] as const;
/** Six single barrels, cooled by air. */
const barrels: Written = {
  banks: [
    [0, 2, 4],
    [1, 3, 5],
  ],
  sharedGasket: false,
  circumstances: ["individual barrels", "air-cooled"],
  obstacles: ["no release", "air-cooled"],
};

interface Printed {
  readonly id: string;
  readonly about: string;
  readonly input: Written;
  /** Place of the cylinder to explain, as it is numbered. */
  readonly target: number;
  readonly causes: Readonly<Record<string, number>>;
  /** top, bottom, test, nothing, unlisted. */
  readonly groups: readonly number[];
  /** H of the groups [bits]. */
  readonly unsure: number;
  /** Bits and bits an hour, the quickest first. */
  readonly tests: readonly (readonly [string, number, number])[];
}

export const printed: readonly Printed[] = [
  {
    id: "W1",
    about: "one low",
    input: { dry: onOne },
    target: 3,
    causes: {
      "exhaust-valve": 0.281,
      "worn-rings-or-bore": 0.126,
      "plug-seal": 0.107,
      "intake-valve": 0.071,
    },
    groups: [0.608, 0.217, 0.109, 0.035, 0.031],
    unsure: 1.586,
    tests: [
      ["repeat", 0.073, 0.871],
      ["wet", 0.28, 0.841],
      ["leak-down-and-listen", 0.808, 0.746],
    ],
  },
  {
    id: "W2",
    about: "one low that oil does not help",
    input: { dry: onOne, wet: [160, undefined, 118, undefined], oil },
    target: 3,
    causes: { "exhaust-valve": 0.34, "plug-seal": 0.129, "intake-valve": 0.086, "tight-lash": 0.082 },
    groups: [0.736, 0.064, 0.129, 0.048, 0.022],
    unsure: 1.293,
    tests: [
      ["repeat", 0.083, 0.99],
      ["leak-down-and-listen", 0.665, 0.614],
    ],
  },
  {
    id: "W3",
    about: "one low that oil helps",
    input: { dry: onOne, wet: [160, undefined, 145, undefined], oil },
    target: 3,
    causes: {
      "worn-rings-or-bore": 0.43,
      "exhaust-valve": 0.132,
      "stuck-rings": 0.117,
      "broken-ring-or-piston": 0.068,
    },
    groups: [0.283, 0.619, 0.053, 0.005, 0.041],
    unsure: 1.392,
    tests: [
      ["leak-down-and-listen", 0.704, 0.65],
      ["repeat", 0.041, 0.497],
      ["borescope", 0.277, 0.474],
    ],
  },
  {
    id: "W4",
    about: "one low, its air heard at the exhaust",
    input: {
      dry: onOne,
      held: [93, 94, 70, 93],
      supply: 100,
      heard: ["crankcase", "none", "exhaust", "crankcase"],
      tools: ["leak-down tester"],
    },
    target: 3,
    causes: { "exhaust-valve": 0.77, "tight-lash": 0.105, "sticking-valve": 0.075 },
    groups: [0.968, 0.015, 0.004, 0.001, 0.012],
    unsure: 0.256,
    tests: [],
  },
  {
    id: "W5",
    about: "two neighbours low at once",
    input: { dry: [150, 100, 98, 149], onset: [undefined, "sudden", "sudden", undefined] },
    target: 3,
    causes: { "gasket-to-neighbour": 0.767, "washed-or-dry-bores": 0.099, "exhaust-valve": 0.043 },
    groups: [0.858, 0.015, 0.118, 0.001, 0.008],
    unsure: 0.705,
    tests: [
      ["repeat", 0.112, 1.35],
      ["wet", 0.199, 0.598],
    ],
  },
  {
    id: "W6",
    about: "all low and even, cranked slowly",
    input: {
      dry: [110, 108, 112, 109],
      expected: [150, "maker"],
      circumstances: ["speed low", "throttle open"],
    },
    target: 2,
    causes: { "slow-cranking": 0.647 },
    groups: [0.082, 0.162, 0.713, 0.042, 0.001],
    unsure: 1.268,
    tests: [
      ["repeat", 0.199, 2.39],
      ["conditions", 0.467, 1.401],
    ],
  },
  {
    id: "W7",
    about: "stood 14 months, oil brings all of it back",
    input: {
      dry: [122, 96, 131, 101],
      wet: [158, 140, 160, 148],
      oil: [0.04, 8.5],
      expected: [150, "baseline"],
      circumstances: ["stood 6 months or more"],
    },
    target: 2,
    causes: { "washed-or-dry-bores": 0.991 },
    groups: [0.001, 0.007, 0.991, 0, 0.001],
    unsure: 0.079,
    tests: [],
  },
  {
    id: "W8",
    about: "a cylinder that never reads the same",
    input: {
      dry: [
        [150, 151],
        [148, 66, 140],
        [152, 150],
        [149, 150],
      ],
    },
    target: 2,
    causes: { "plug-seal": 0.303, "sticking-valve": 0.22, "exhaust-valve": 0.106, "stuck-rings": 0.083 },
    groups: [0.501, 0.147, 0.305, 0.005, 0.042],
    unsure: 1.661,
    tests: [
      ["leak-down-and-listen", 0.921, 0.85],
      ["wet", 0.225, 0.676],
    ],
  },
  {
    id: "W9",
    about: "overheated, bubbles in the coolant",
    input: {
      dry: [150, 151, 131, 149],
      held: [undefined, undefined, 66, undefined],
      heard: [undefined, undefined, "coolant", undefined],
      circumstances: ["event: overheated"],
      signs: { "coolant loss": "present", "oil use": "absent" },
    },
    target: 3,
    causes: { "gasket-to-coolant": 0.733, crack: 0.254, "none-of-these": 0.008 },
    groups: [0.989, 0, 0, 0.002, 0.008],
    unsure: 0.099,
    tests: [["coolant", 0.021, 0.028]],
  },
  {
    id: "W10",
    about: "one of six barrels hisses at the exhaust",
    input: {
      ...barrels,
      held: [73, 72, 60, 74, 71, 73],
      heard: [undefined, undefined, "exhaust"],
      tools: ["leak-down tester", "borescope"],
    },
    target: 3,
    causes: { "exhaust-valve": 0.583, "no-fault": 0.193, "tight-lash": 0.082, "sticking-valve": 0.073 },
    groups: [0.766, 0.013, 0.012, 0.193, 0.017],
    unsure: 1.007,
    tests: [
      ["cranking", 0.419, 2.093],
      ["borescope", 0.197, 0.79],
      ["re-seat-and-repeat", 0.186, 0.557],
    ],
  },
];
