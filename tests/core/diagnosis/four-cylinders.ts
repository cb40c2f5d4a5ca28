// Four cylinders of which the third reads low, and nothing else is known. Invented.

import type { Evidence } from "@sealtrend/core/parts";
import { psi } from "./worked-evidence.ts";

export const four: Evidence = {
  cylinders: [150, 152, 110, 149].map((value) => ({ dry: [value * psi] })),
  banks: [[0, 1, 2, 3]],
  sharedGasket: true,
  circumstances: [],
  restrictor: "known",
  signs: {},
  tools: [],
  obstacles: ["no release"],
};
