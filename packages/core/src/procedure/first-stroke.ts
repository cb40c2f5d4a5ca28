// The first stroke read apart from the last: how a cylinder builds up.

import { crankingCautions, preparation } from "./dry.ts";
import { type Sheet, judgement, portsOnly, several, single } from "./line.ts";

export const firstStroke: Sheet = {
  name: "First-stroke test",
  before: preparation,
  steps: [
    {
      text: "Needle to zero; crank until it has jumped once; read.",
      source: "GM 1990-2009; Ford Probe 1997; Harley-Davidson Sportster 2012",
    },
    {
      text: "Do not let it down: crank on to the full strokes, read again.",
      source: "GM 1990-2009, Ford Probe 1997 manuals",
    },
    {
      text: "Low first, then building: rings. Low and staying low: valves.",
      source: "GM 1990-2009, Isuzu, Ford Probe 1997, Skoda, Nissan, Mercedes W203 manuals",
      when: (situation) => !portsOnly(situation),
    },
    {
      text: "Low first, then building: rings.",
      source: "GM 1990-2009, Ford Probe 1997 manuals",
      when: portsOnly,
    },
    {
      text: "Hold it against the others on this gauge, never against a book share.",
      source: "computed by this project: the share is set by gauge and hose volume",
      when: several,
    },
    { text: "Hold it against its own earlier tests on this gauge only.", source: judgement, when: single },
    {
      text: ({ engine }) => `sealtrend enter ${engine.id} --first-stroke "…" --dry "…" --unit …`,
      source: "this tool",
    },
  ],
  cautions: crankingCautions,
  voids: [
    {
      text: "another gauge or hose; needle not at zero before it",
      source: "computed by this project (hose)",
    },
  ],
};
