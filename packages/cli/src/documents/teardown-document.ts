// The JSON of `teardown`, sealtrend/teardown@1. Lengths in mm whatever was typed, chances 0 to 1; u_ is a standard uncertainty.

import {
  type Engine,
  type Length,
  type LimitVerdict,
  type Oversize,
  type TeardownAssessment,
  type TeardownItem,
  type Undersize,
  fromSi,
} from "@sealtrend/core";
import { blocksOf } from "../render/teardown/teardown-rows.ts";
import { conflictsInOrder } from "../render/teardown/teardown-doubts.ts";
import { headlineText } from "../render/teardown/teardown-headline.ts";
import { openingOf } from "../render/teardown/teardown-next.ts";

/** What is undefined is left out when the document is written. */
export const teardownDocument = (
  assessment: TeardownAssessment,
  engine: Pick<Engine, "id" | "name" | "cylinders" | "use">,
) => {
  const { teardown, from, to, items, derived, parts, findings, counts, work } = assessment;
  return {
    schema: "sealtrend/teardown@1",
    engine: { id: engine.id, name: engine.name },
    teardown,
    from,
    to,
    text: headlineText(assessment, blocksOf(assessment, engine.cylinders)),
    items: items.map(itemDocument),
    derived: derived.map(itemDocument),
    parts: parts.map(({ decidedBy, ...part }) => ({
      ...part,
      decidedBy: { label: decidedBy.label, at: decidedBy.at, value_mm: mm(decidedBy.value) },
    })),
    findings,
    spoilt: assessment.spoilt,
    counts,
    conflicts: conflictsInOrder(assessment).map(({ meant, ...conflict }) => ({
      ...conflict,
      meant_mm: meant?.map(mm),
    })),
    oversize: assessment.oversize === undefined ? undefined : oversizeDocument(assessment.oversize),
    undersize: assessment.undersizes.length === 0 ? undefined : assessment.undersizes.map(undersizeDocument),
    work,
    openedAs: openingOf(assessment),
    notJudged: assessment.notJudged,
    missing: missingOf(assessment),
  };
};

const mm = (value: Length): number => fromSi(value, "mm");
const optional = (value: Length | undefined): number | undefined =>
  value === undefined ? undefined : mm(value);

const itemDocument = (item: TeardownItem) => ({
  part: item.part,
  label: item.label,
  at: item.at,
  quantity: item.quantity,
  value_mm: mm(item.value),
  apart_mm: item.apart?.map(mm),
  between_mm: item.between === undefined ? undefined : [mm(item.between.low), mm(item.between.high)],
  u_mm: mm(item.uncertainty),
  uncertaintyFrom: item.uncertaintyFrom,
  readings: item.readings,
  unit: item.unit,
  instrument: item.instrument,
  state: item.state,
  from: item.from,
  standing: item.standing ?? "no-limit",
  superseded: item.superseded,
  supersededBy:
    item.supersededBy === undefined
      ? undefined
      : { ...item.supersededBy, value: undefined, value_mm: optional(item.supersededBy.value) },
  waits: item.waits,
  waitsFor: item.waitsFor,
  verdicts: item.verdicts.map(verdictDocument),
});

const verdictDocument = ({
  kind,
  low,
  high,
  source,
  probability,
  verdict,
  neverInside,
  neverBy,
  size,
  limitFor,
  waits,
  settlement,
}: LimitVerdict) => ({
  kind,
  low_mm: optional(low),
  high_mm: optional(high),
  source,
  probability,
  verdict,
  neverInside,
  neverBy,
  size_mm: optional(size),
  limitFor,
  waits,
  settlement:
    settlement === undefined
      ? undefined
      : {
          needed_mm: mm(settlement.needed),
          instrument: settlement.by?.instrument,
          resolution_mm: optional(settlement.by?.resolution),
          readings: settlement.by?.readings,
          text: settlement.text,
        },
});

const oversizeDocument = ({ original, originalFrom, alreadyBored, unit, honeStock, answers }: Oversize) => ({
  original_mm: mm(original),
  originalFrom,
  alreadyBored_mm: optional(alreadyBored),
  unit,
  honeStock_mm: mm(honeStock),
  answers: answers.map(({ offset, cylinders, size, finished, boreTo }) => ({
    offset,
    size_mm: optional(size),
    finished_mm: optional(finished),
    boreTo_mm: optional(boreTo),
    cylinders: cylinders.map(({ label, needed, size: does }) => ({
      label,
      needed_mm: mm(needed),
      size_mm: optional(does),
    })),
  })),
});

const undersizeDocument = ({ part, unit, needed, decidedBy, size, low, high }: Undersize) => ({
  part,
  unit,
  needed_mm: mm(needed),
  decidedBy,
  size_mm: optional(size),
  low_mm: optional(low),
  high_mm: optional(high),
});

/** What is not known, named as a path of this document. */
const missingOf = ({ counts, withoutLimit }: TeardownAssessment): readonly string[] => [
  ...counts.flatMap(({ part, quantity, missing, measured, expected }) => {
    const what = [part, quantity].filter((word) => word !== undefined).join(" ");
    if (measured === 0 && expected > 0) return [`items: ${what}`];
    return missing.map((label) => `items: ${what} ${label}`);
  }),
  ...withoutLimit.map(({ part, quantity }) => `limits.clearances: ${part} ${quantity}`),
];
