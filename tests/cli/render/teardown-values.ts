// Teardowns made by hand, for the screen alone: what the core makes of readings is tested there. All figures invented.

import { type LimitVerdict, type TeardownAssessment, type TeardownItem, length } from "@sealtrend/core";

const inch = 0.0254;
export const mm = (value: number) => length(value / 1000);
export const inches = (value: number) => length(value * inch);

type Given = Partial<TeardownItem> & Pick<TeardownItem, "part" | "quantity" | "value">;

export const item = (given: Given): TeardownItem => ({
  uncertainty: mm(0.006),
  uncertaintyFrom: "bore gauge 0.01 mm",
  readings: 1,
  unit: "mm",
  state: "cleaned",
  verdicts: [],
  ...given,
  ...standingOf(given),
});

/** As the core says it of what was found and cleaned: the wear limit first. */
const standingOf = ({
  standing,
  waits,
  verdicts = [],
}: Pick<Given, "standing" | "waits" | "verdicts">): Pick<TeardownItem, "standing"> => {
  const [fresh, wear] = (["new", "wear"] as const).map(
    (wanted) => verdicts.find(({ kind }) => kind === wanted)?.verdict,
  );
  const ruling = wear ?? fresh;
  if (standing !== undefined || ruling === undefined) return standing === undefined ? {} : { standing };
  if (waits === true) return { standing: "waits" };
  if (ruling === "outside") return { standing: "outside" };
  if (ruling === "too-close-to-tell") return { standing: "too-close" };
  if (fresh === undefined) return { standing: "inside-wear" };
  return { standing: fresh === "outside" ? "worn" : fresh === "inside" ? "inside" : "close-as-new" };
};

export const verdict = (given: Partial<LimitVerdict> = {}): LimitVerdict => ({
  kind: "wear",
  source: "workshop book p. 62",
  probability: 0.9997,
  verdict: "inside",
  ...given,
});

/** Each figure that has a verdict decides its place. */
const partsOf = (items: readonly TeardownItem[]): TeardownAssessment["parts"] =>
  items.flatMap((decidedBy) =>
    decidedBy.verdicts.map(({ kind, probability, verdict: word }) => ({
      part: decidedBy.part,
      ...(decidedBy.label === undefined ? {} : { label: decidedBy.label }),
      quantity: decidedBy.quantity,
      ...{ kind, atLeast: probability, atMost: probability, verdict: word, decidedBy },
    })),
  );

export const assessed = (given: Partial<TeardownAssessment>): TeardownAssessment => ({
  teardown: 1,
  from: "2026-03-02",
  to: "2026-03-02",
  items: [],
  derived: [],
  findings: [],
  spoilt: [],
  counts: [],
  conflicts: [],
  undersizes: [],
  work: [],
  withoutLimit: [],
  offeredFor: [],
  ...given,
  parts: partsOf([...(given.items ?? []), ...(given.derived ?? [])]),
});

const thread = (label: string, value: number, told: Partial<LimitVerdict> = {}): TeardownItem =>
  item({
    part: "rod bearing",
    label,
    quantity: "thread clearance",
    value: inches(value),
    uncertainty: inches(0.00025),
    uncertaintyFrom: "gauging thread",
    unit: "in",
    instrument: "thread",
    verdicts: [verdict({ kind: "new", low: inches(0.001), high: inches(0.0025), ...told })],
  });

/** Six pins by gauging thread, the last too near its limit (handbook/teardown.md 3.4, case 3: 0.8849). */
export const sixPins = assessed({
  items: [
    ...["1", "2", "4"].map((label) => thread(label, 0.0015)),
    ...["3", "5"].map((label) => thread(label, 0.002)),
    thread("6", 0.0022, {
      probability: 0.8849,
      verdict: "too-close-to-tell",
      settlement: {
        needed: inches(0.000182),
        text: "bore gauge set in the micrometer that measures the pin, two readings",
      },
    }),
  ],
  counts: [
    { part: "rod bearing", expected: 6, measured: 6, missing: [], beyond: [], from: "layout" },
    { part: "main", expected: 7, measured: 7, missing: [], beyond: [], from: "layout" },
  ],
});

const bore = (
  label: string,
  quantity: string,
  value: number,
  high: number,
  told: Partial<LimitVerdict> = {},
) =>
  item({
    part: "bore",
    label,
    quantity,
    value: mm(value),
    from: "top less bottom",
    verdicts: [verdict({ low: mm(-high), high: mm(high), ...told })],
  });

/** Four bores, the third too tapered to stay; an oversize that cleans up; work. */
export const wornBore = assessed({
  derived: [
    ...["1", "2", "4"].map((label, i) => bore(label, "taper", 0.02 + i / 100, 0.1)),
    bore("3", "taper", 0.12, 0.1, { probability: 0.0004, verdict: "outside" }),
    ...["1", "2", "3", "4"].map((label) => bore(label, "out-of-round", -0.01, 0.05)),
  ],
  counts: [
    { part: "bore", expected: 4, measured: 4, missing: [], beyond: [], from: "cylinders" },
    { part: "main", expected: 5, measured: 4, missing: ["5"], beyond: [], from: "layout" },
  ],
  oversize: {
    original: mm(86.5),
    originalFrom: "unworn reading",
    unit: "mm",
    honeStock: mm(0.02),
    answers: [
      {
        offset: "worst",
        cylinders: [{ label: "3", needed: mm(86.95), size: mm(0.5) }],
        size: mm(0.5),
        finished: mm(87),
        boreTo: mm(86.98),
      },
      {
        offset: "none",
        cylinders: [{ label: "3", needed: mm(86.71), size: mm(0.25) }],
        size: mm(0.25),
        finished: mm(86.75),
        boreTo: mm(86.73),
      },
    ],
  },
  findings: [
    {
      date: "2026-03-02",
      part: "bore",
      label: "3",
      quantity: "score",
      word: "nail catches",
      state: "cleaned",
    },
    { date: "2026-03-02", part: "bore", label: "1", quantity: "crosshatch", word: "full", state: "cleaned" },
    { date: "2026-03-02", part: "bore", label: "2", quantity: "crosshatch", word: "full", state: "cleaned" },
  ],
  work: [
    {
      code: "bore-oversize",
      text: "have all four bored and honed to +0.50 mm, pistons in the shop's hands first",
      why: "bore 3 taper 0.12 mm, limit 0.10",
      labels: ["3"],
      caution: "caps on at full torque; caps and rods never swap places",
    },
  ],
  conflicts: [
    {
      code: "likely-slip",
      part: "ring",
      label: "2",
      quantity: "end gap",
      text: "ring 1 of cylinder 2: end gap 0.05 mm",
      mend: "was 0.5 meant? type it again",
      weight: "doubtful",
    },
  ],
});
