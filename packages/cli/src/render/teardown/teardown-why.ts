// `teardown --why`: every figure with its uncertainty and where that comes from, every limit with the chance, the counts,
// the sizes cylinder by cylinder, and how a verdict comes about.

import type { LimitVerdict, PartCount, TeardownAssessment, TeardownItem } from "@sealtrend/core";
import { length } from "@sealtrend/core";
import { clean } from "../clean.ts";
import { prose } from "../prose.ts";
import { aboutChance } from "../decide/decide-words.ts";
import { type Written, lengthText, lengthUnit, spreadText, writtenIn } from "./teardown-length.ts";
import { limitValues, rangeText } from "./teardown-limits.ts";
import { sizeTexts } from "./teardown-sizes.ts";
import { numberOf, readOf } from "./teardown-table.ts";
import { atText, figureName, partNamed, partsName } from "./teardown-words.ts";

interface WhyOptions {
  readonly width: number;
  readonly units: string | undefined;
}

export const teardownWhy = (assessment: TeardownAssessment, options: WhyOptions): readonly string[] => [
  ...titled("Measured", itemLines(assessment.items, options), options.width),
  ...titled("Made of these", itemLines(assessment.derived, options), options.width),
  ...titled("Parts as a whole", partLines(assessment), options.width),
  ...titled("Counts", countLines(assessment), options.width),
  ...titled(
    "Sizes",
    [...sizeTexts(assessment, options.units), ...oversizeLines(assessment, options)],
    options.width,
  ),
  ...[...method, ...day(assessment)].flatMap((text) => prose(text, options.width)),
];

const method = [
  "How: inside means a chance of 95 in 100 or more that the true figure conforms, outside 5 in 100 or less, between them the instrument cannot tell (JCGM 106:2012 clause 7, flat prior, normal error; 0.95 and 0.05 are a usual choice). A signed figure counts either way.",
  "± on the first screen is twice the standard uncertainty. What micrometer and setting have in common falls out of taper, out-of-round and wear; repeats help only the reading.",
];

const day = ({ teardown, from, to }: TeardownAssessment): readonly string[] => [
  `Teardown ${String(teardown)}, measured ${from === to ? from : `${from} to ${to}`}.`,
];

const titled = (title: string, lines: readonly string[], width: number): readonly string[] =>
  lines.length === 0 ? [] : [title, ...lines.flatMap((line) => prose(line, width, "  ")), ""];

/** One figure a line, with its verdicts. */
const itemLines = (items: readonly TeardownItem[], { units }: WhyOptions): readonly string[] =>
  items.map((item) => {
    const unit = lengthUnit(units, [item.unit]);
    const written = writtenIn(unit, [...readOf(item), ...limitValues(item)]);
    const place = item.at === undefined ? "" : ` ${atText(item)}`;
    const named = `${partNamed(item.part, item.label === undefined ? [] : [item.label])}${place}`;
    const leaves =
      item.between === undefined
        ? ""
        : `, ${lengthText(item.between.low, written)} goes and ${lengthText(item.between.high, written)} does not`;
    const from = [item.from, item.uncertaintyFrom].filter((text) => text !== undefined && text !== "");
    const said = [
      `${named} ${figureName({ part: item.part, quantity: item.quantity })} ${numberOf(item, written)}\u00a0${unit}${leaves}`,
      `u ${spreadText(item.uncertainty, unit)}\u00a0${unit}${from.length === 0 ? "" : ` (${from.map((text) => clean(text ?? "")).join("; ")})`}`,
      item.state,
      ...(item.supersededBy === undefined ? [] : ["left out"]),
      ...item.verdicts.map((verdict) => verdictText(verdict, written)),
    ];
    return said.join("; ");
  });

/** Nothing measures better: to name it would help nobody. [m] */
const finest = 1e-7;

/** `wear up to 0.10: inside, about 99 in 100 (manual p. 62)`. */
const verdictText = (verdict: LimitVerdict, written: Written): string => {
  const word = verdict.verdict === "too-close-to-tell" ? "too close to tell" : verdict.verdict;
  const source = verdict.source === undefined ? "" : ` (${clean(verdict.source)})`;
  const needed =
    verdict.settlement === undefined || verdict.settlement.needed < finest
      ? ""
      : `, needs u ${spreadText(verdict.settlement.needed, written.unit)}\u00a0${written.unit}`;
  return `${verdict.kind} ${rangeText(verdict, written)}: ${word}, ${aboutChance(verdict.probability)} inside${needed}${source}`;
};

/** Many readings against one limit: all must conform. */
const partLines = ({ parts }: TeardownAssessment): readonly string[] =>
  parts.map(({ part, label, quantity, kind, atLeast, atMost, verdict, decidedBy }) => {
    const word = verdict === "too-close-to-tell" ? "too close to tell" : verdict;
    const at = decidedBy.at === undefined ? (decidedBy.label ?? "") : atText(decidedBy);
    return `${partNamed(part, label === undefined ? [] : [label])} ${quantity}, ${kind}: ${word}; that all conform is between ${aboutChance(atLeast)} and ${aboutChance(atMost)}${at === "" ? "" : `, decided ${at.startsWith("at ") ? at : `at ${clean(at)}`}`}`;
  });

const countLines = ({ counts }: TeardownAssessment): readonly string[] =>
  counts.map(({ part, quantity, expected, measured, from, missing, beyond }) =>
    [
      `${[partsName(part), quantity].filter((word) => word !== undefined).join(", ")}: ${String(measured)} of ${String(expected)} (${countedFrom[from]})`,
      ...(missing.length === 0 ? [] : [`missing ${missing.join(" ")}`]),
      ...(beyond.length === 0 ? [] : [`more than there are: ${beyond.join(" ")}`]),
    ].join("; "),
  );

const countedFrom: Readonly<Record<PartCount["from"], string>> = {
  layout: "as engine.json says",
  cylinders: "by the cylinders",
  "usual for the layout": "usual for such an engine",
};

const oversizeLines = ({ oversize }: TeardownAssessment, { units }: WhyOptions): readonly string[] => {
  if (oversize === undefined) return [];
  const { answers, original, originalFrom, honeStock } = oversize;
  const all = answers.flatMap(({ cylinders }) => cylinders.map(({ needed }) => needed));
  const written = writtenIn(lengthUnit(units, [oversize.unit]), [...all, original, honeStock]);
  return [
    `original ${lengthText(original, written)} (${originalFrom}); ${lengthText(honeStock, written)} left for the hone`,
    ...answers.map(({ offset, cylinders }) => {
      const needs = cylinders.map(({ label, needed, size }) => {
        const does = size === undefined ? "none does" : `+${lengthText(size, written)} does`;
        return `${label}: ${lengthText(length(needed), written)} needed, ${does}`;
      });
      return `bar ${offset === "worst" ? "centred where the bore was, wear on one wall" : offset === "none" ? "centred in the worn bore" : "as the shop says"}: ${needs.join("; ")}`;
    }),
  ];
};
