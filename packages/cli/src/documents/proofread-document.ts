// The JSON of `proofread`, sealtrend/proofread@1: the files read, and every problem with the keys of sealtrend/problems@1.

import type { Examined } from "../logbook/examine.ts";
import { faultEntries } from "../render/faults.ts";

export const proofreadDocument = ({ files, faults }: Examined) => ({
  schema: "sealtrend/proofread@1",
  files,
  problems: faultEntries(faults),
});
