// The JSON of `proofread`, sealtrend/proofread@1: the files read, and the problems with the keys of sealtrend/problems@1.

import type { Examined } from "../logbook/examine.ts";
import { toldEntries } from "../render/faults.ts";

export const proofreadDocument = ({ files, faults }: Examined) => ({
  schema: "sealtrend/proofread@1",
  files,
  ...toldEntries(faults),
});
