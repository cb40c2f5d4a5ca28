// What stands in the place of a test that is not for this engine.

import type { Sheet } from "./line.ts";

export const insteadOfOil: Sheet = {
  name: "No wet test",
  before: [],
  steps: [
    {
      text: ({ engine }) => `Leak-down tells more: sealtrend how leak-down ${engine.id}`,
      source: "judgement of this project",
      when: ({ engine }) => engine.leakDownTest?.allowed !== false,
    },
    {
      text: ({ engine }) => `Or the first stroke: sealtrend how first-stroke ${engine.id}`,
      source: "GM 1990-2009, Isuzu, Ford Probe 1997 manuals",
    },
    {
      text: "Where the manual allows oil: set wetTest in engine.json, with its oil.",
      source: "this tool",
      when: ({ engine }) => engine.wetTest?.allowed !== false && engine.ignition === "compression",
    },
    {
      text: ({ engine }) => `Say what it is: sealtrend engine set ${engine.id} ignition spark`,
      source: "this tool",
      when: ({ engine }) => engine.ignition === "unknown",
    },
  ],
  cautions: [],
  voids: [],
};

export const insteadOfAir: Sheet = {
  name: "No leak-down test",
  before: [],
  steps: [
    {
      text: ({ engine }) => `Cranking compression instead: sealtrend how dry ${engine.id}`,
      source: "judgement of this project",
    },
    {
      text: ({ engine }) => `And its first stroke: sealtrend how first-stroke ${engine.id}`,
      source: "GM 1990-2009, Isuzu, Ford Probe 1997 manuals",
    },
    {
      text: ({ engine }) =>
        `Should it be allowed: sealtrend engine set ${engine.id} leakDownTest.allowed true`,
      source: "this tool",
    },
  ],
  cautions: [],
  voids: [],
};
