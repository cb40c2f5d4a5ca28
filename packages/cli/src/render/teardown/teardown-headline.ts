// The answer in a sentence: what is outside, what cannot be told, what of the rest is inside; and how much was measured.

import type { MeasuredPart, TeardownAssessment, TeardownItem } from "@sealtrend/core";
import { clean } from "../clean.ts";
import { prose } from "../prose.ts";
import { displayWidth, padStart } from "../width.ts";
import { sentence } from "../words.ts";
import { chanceText } from "../show/cause-words.ts";
import { limitsText } from "./teardown-limits.ts";
import type { Block } from "./teardown-rows.ts";
import { type Standing, standingOf } from "./teardown-standing.ts";
import { numberOf, writtenOf } from "./teardown-table.ts";
import { partsName, subjects } from "./teardown-words.ts";

/** @param blocks - all of them, what is outside first */
export const headlineLines = (
  assessment: TeardownAssessment,
  blocks: readonly Block[],
  { width, units }: { readonly width: number; readonly units: string | undefined },
): readonly string[] => {
  const measured = measuredText(assessment);
  const lines = prose(headlineText(assessment, blocks, units), width);
  const last = lines.at(-1) ?? "";
  if (measured === "") return lines;
  if (displayWidth(last) + 3 + displayWidth(measured) > width) return [...lines, padStart(measured, width)];
  return [...lines.slice(0, -1), last + padStart(measured, width - displayWidth(last))];
};

/** @param units - the value of --units */
export const headlineText = (
  assessment: TeardownAssessment,
  blocks: readonly Block[],
  units?: string,
): string => {
  const { spoilt } = assessment;
  const isSpoilt = (part: MeasuredPart, label: string): boolean =>
    spoilt.some((one) => one.part === part && (one.label ?? "") === label);
  const at = (standing: Standing): readonly (readonly [MeasuredPart, readonly string[]])[] =>
    blocks.flatMap((block) => {
      const labels = block.labels
        .filter((label) => labelStanding(block, label) === standing)
        // serviceable is nothing that is spoilt
        .filter((label) => !mayStay.includes(standing) || !isSpoilt(block.part, label));
      if (labels.length === 0) return [];
      return [[block.part, labels.filter((label) => label !== "")] as const];
    });
  const clauses = [
    clause(at("outside"), `outside${onlyFigure(blocks, at("outside"), units)}`),
    clause(at("close"), "too close to tell"),
    clause(at("waits"), "not judged: figures that cannot all be right"),
  ].filter((text) => text !== "");
  const place = clauses.length === 0 ? "first" : "after others";
  const worn = wornClause(at("worn"), "worn but serviceable (outside as new, inside the wear limit)", place);
  // beside what is worse it is one of the rest
  const isAlone = place === "first" && worn === "";
  const near = isAlone
    ? wornClause(at("near"), "inside the wear limit and too close to tell as new", place)
    : "";
  const rest: readonly Standing[] = near === "" ? ["inside", "near"] : ["inside"];
  const inside = blocks.filter(({ rows }) => rows.some(({ cells }) => has(cells.values(), rest)));
  const first = spoiltText(spoilt);
  if (clauses.length === 0 && worn === "" && near === "")
    return first + quietText(assessment, inside.length > 0);
  const said = [...clauses, worn, near].filter((text) => text !== "").join("; ");
  return first + sentence(`${said}${inside.length > 0 ? "; the rest is inside." : "."}`);
};

const clause = (parts: readonly (readonly [MeasuredPart, readonly string[]])[], word: string): string =>
  parts.length === 0 ? "" : `${subjects(parts)} ${word}`;

const mayStay: readonly Standing[] = ["worn", "near"];

/** More of them are counted: they would push the figures off the screen. */
const mostSpoilt = 4;

/** `First of all: a crack in the head, bore 3 (nail catches).`; empty where nothing was seen that stops the job. */
const spoiltText = (spoilt: TeardownAssessment["spoilt"]): string => {
  if (spoilt.length === 0) return "";
  const told = spoilt.slice(0, mostSpoilt).map(({ text }) => clean(text.replace(/: (.*)$/, " ($1)")));
  const left = spoilt.length - told.length;
  return `First of all: ${told.join(", ")}${left === 0 ? "" : ` and ${String(left)}\u00a0more (--why)`}. `;
};

/** More worn parts than these are counted. */
const mostWorn = 4;

/** What may stay in is named where nothing is worse, and counted else. */
const wornClause = (
  parts: readonly (readonly [MeasuredPart, readonly string[]])[],
  word: string,
  place: "first" | "after others",
): string => {
  const number = parts.reduce((so, [, labels]) => so + Math.max(1, labels.length), 0);
  if (number <= (place === "first" ? mostWorn : 1)) return clause(parts, word);
  return `${String(number)} parts are ${word}`;
};

/** Where one place alone is outside, by how much: `: taper +0.12 mm, wear up to 0.10`. */
const onlyFigure = (
  blocks: readonly Block[],
  outside: readonly (readonly [MeasuredPart, readonly string[]])[],
  units: string | undefined,
): string => {
  const [[part, labels] = []] = outside;
  if (outside.length !== 1 || labels === undefined || labels.length > 1) return "";
  const rows = blocks.find((block) => block.part === part)?.rows ?? [];
  const figures = rows.flatMap((row) => {
    const item = row.cells.get(labels[0] ?? "");
    return item === undefined || standingOf(item) !== "outside" ? [] : [{ row, item }];
  });
  const [first] = figures;
  if (first === undefined || figures.length > 1) return "";
  const written = writtenOf(first.row, units);
  const number = `${numberOf(first.item, written)}\u00a0${written.unit}`;
  return ` (${first.row.name} ${number}, ${limitsText(first.item, written)})`;
};

/** Nothing is wrong as far as it was measured and has a limit. */
const quietText = (assessment: TeardownAssessment, isInside: boolean): string => {
  const { counts, withoutLimit, items } = assessment;
  const together = togetherText(assessment);
  if (isInside && together !== "") return together;
  if (!isInside)
    return items.length === 0
      ? "Nothing that can be held against a limit was measured."
      : "No limit is recorded for what was measured: values only, no verdict.";
  const missing = counts.some(({ missing: labels }) => labels.length > 0);
  const open = withoutLimit.length > 0 ? " that has a limit" : "";
  return missing ? `All${open} that was measured is inside; not all was measured.` : `All${open} is inside.`;
};

/** Each inside by itself, while of all of a kind together that is less sure. */
const togetherText = ({ parts }: TeardownAssessment): string => {
  const open = parts.filter(
    ({ label, kind, verdict, part, quantity }) =>
      label === undefined &&
      verdict === "too-close-to-tell" &&
      (kind === "wear" ||
        !parts.some((one) => one.part === part && one.quantity === quantity && one.kind === "wear")),
  );
  const [first] = open;
  if (first === undefined) return "";
  return `Each figure is inside; that all ${partsName(first.part)} are, in ${first.quantity}, is ${chanceText(first.atLeast)} or more.`;
};

/** The worst of one label. */
const labelStanding = ({ rows }: Block, label: string): Standing => {
  const all = rows.flatMap(({ cells }) => {
    const item = cells.get(label);
    return item === undefined ? [] : [standingOf(item)];
  });
  return (
    (["outside", "close", "waits", "worn", "near", "inside"] as const).find((one) => all.includes(one)) ??
    "no-limit"
  );
};

const has = (items: Iterable<TeardownItem>, standings: readonly Standing[]): boolean =>
  [...items].some((item) => standings.includes(standingOf(item)));

/** `13 of 13 measured`: of the kinds of which anything was. */
const measuredText = ({ counts }: TeardownAssessment): string => {
  const begun = counts.filter(({ measured }) => measured > 0);
  if (begun.length === 0) return "";
  const sum = (of: "measured" | "expected"): number => begun.reduce((so, count) => so + count[of], 0);
  return `${String(sum("measured"))} of ${String(sum("expected"))} measured`;
};
