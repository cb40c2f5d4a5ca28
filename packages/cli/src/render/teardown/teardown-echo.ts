// The answer to one typed line: what it comes to, at once, and what may be a slip.

import {
  type Measurement,
  type TeardownAssessment,
  type TeardownConflict,
  type TeardownItem,
  length,
} from "@sealtrend/core";
import { prose } from "../prose.ts";
import { chanceText } from "../show/cause-words.ts";
import { counted } from "../words.ts";
import { conflictText } from "./teardown-doubts.ts";
import { type Written, lengthNumber, lengthUnit, writtenIn } from "./teardown-length.ts";
import { limitValues, limitsText } from "./teardown-limits.ts";
import { deciding } from "./teardown-rows.ts";
import { leftOutOf } from "./teardown-left-out.ts";
import { findingText } from "./teardown-seen.ts";
import { type Standing, rulingVerdict, standingOf, standingWords } from "./teardown-standing.ts";
import { numberOf, readOf } from "./teardown-table.ts";
import { figureName, partNamed } from "./teardown-words.ts";

type Echoed = Pick<Measurement, "part" | "label" | "at" | "quantity" | "value" | "state">;

interface EchoOptions {
  readonly width: number;
  /** The value of --units. */
  readonly units: string | undefined;
}

/** Lines without line ends. @param measurements - of the line, with all before it in the assessment */
export const echoLines = (
  assessment: TeardownAssessment,
  measurements: readonly Echoed[],
  options: EchoOptions,
): readonly string[] => {
  const [first] = measurements;
  if (first === undefined) return [];
  const isOwn = (one: { readonly part: Echoed["part"]; readonly label?: string }): boolean =>
    one.part === first.part && one.label === first.label;
  const quantities = new Set(measurements.map(({ quantity }) => quantity));
  const isSeen = measurements.every(({ value }) => value.kind === "word");
  const items = isSeen
    ? []
    : [
        ...assessment.items.filter(
          (item) => isOwn(item) && quantities.has(item.quantity) && item.superseded === undefined,
        ),
        ...assessment.derived.filter(isOwn),
      ];
  const said = figureTexts(items, options);
  const seen = assessment.findings
    .filter((finding) => isOwn(finding) && quantities.has(finding.quantity))
    .map(findingText);
  const named = partNamed(first.part, first.label === undefined ? [] : [first.label]);
  const others = measurements.filter(({ value }) => value.kind === "volume" || value.kind === "force").length;
  const kept = others === 0 ? [] : [`${named}: kept`];
  const checks = isSeen ? [] : alikeFolded(assessment.conflicts.filter((one) => isOwn(one)));
  const left = isSeen ? [] : leftOutOf(assessment, measurements);
  return [
    ...(said.length === 0 ? kept : [`${named}: ${said.join("; ")}`]),
    ...seen,
    ...left,
    ...checks.map((text) => `check ${text}`),
  ].flatMap((text) => prose(text, options.width, "  "));
};

/** One cause that every figure of a line shares is told of the first of them. */
const alikeFolded = (conflicts: readonly TeardownConflict[]): readonly string[] =>
  [...new Set(conflicts.map(({ code }) => code))].flatMap((code) => {
    const own = conflicts.filter((one) => one.code === code);
    const [first] = own;
    if (first === undefined || own.length < manyAlike) return own.map(conflictText);
    return [`${conflictText(first)}; so ${counted(own.length - 1, "more figure")} of this part`];
  });

const manyAlike = 3;

/** What is not inside first, with its limit; then what is; then what has no limit. The unit is said once. */
const figureTexts = (items: readonly TeardownItem[], { units }: EchoOptions): readonly string[] => {
  const unit = lengthUnit(
    units,
    items.map((item) => item.unit),
  );
  const figures = [...new Set(items.map(figureName))].flatMap((name) => {
    const own = items.filter((item) => figureName(item) === name);
    const item = deciding(own);
    if (item === undefined) return [];
    const written = writtenIn(unit, [...own.flatMap(readOf), ...limitValues(item)]);
    const standing = standingOf(item);
    return [
      { said: `${name} ${figureOf(item, own, written)}`, standing, limits: limitsText(item, written), item },
    ];
  });
  const odd = figures.flatMap(({ said, standing, limits, item }) => {
    if (standing === "inside" || standing === "near" || standing === "no-limit") return [];
    const { probability = 0 } = rulingVerdict(item) ?? {};
    const chance = standing === "close" ? `, ${chanceText(probability)} inside` : "";
    const word =
      standing === "waits" && limits !== "" ? "waits, no verdict: see check" : standingWords[standing];
    return [`${said} ${word}${chance}${limits === "" ? "" : ` (${limits})`}`];
  });
  const of = (wanted: Standing): string =>
    figures.flatMap(({ said, standing }) => (standing === wanted ? [said] : [])).join(", ");
  const [near, fine, bare] = [of("near"), of("inside"), of("no-limit")];
  const all = [
    ...odd,
    ...(near === "" ? [] : [`${near}: inside wear, too close to tell as new`]),
    ...(fine === "" ? [] : [`${fine}: inside`]),
    ...(bare === "" ? [] : [bare]),
  ];
  return all.map((text, i) => (i === 0 ? withUnit(text, unit) : text));
};

/** Behind the first number that is a figure: the 1 of `ring 1` is none. */
const withUnit = (text: string, unit: string): string =>
  text.replace(
    /(?<!\bring )(?<![\d.+-])[+-]?[\d.]+(?: to [\d.]+)?(?=[ ,:]|$)/,
    (number) => `${number}\u00a0${unit}`,
  );

/** The figure that decides, by feeler its two leaves; several without a limit as a range. */
const figureOf = (item: TeardownItem, own: readonly TeardownItem[], written: Written): string => {
  if (item.between !== undefined)
    return `${lengthNumber(item.between.low, written)} to ${lengthNumber(item.between.high, written)}`;
  if (own.length === 1 || standingOf(item) !== "no-limit") return numberOf(item, written);
  const values = own.map(({ value }) => value);
  const [low, high] = [length(Math.min(...values)), length(Math.max(...values))];
  return `${lengthNumber(low, written)} to ${lengthNumber(high, written)}`;
};
