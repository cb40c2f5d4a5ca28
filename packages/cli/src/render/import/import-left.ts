// What of the sheet does not go in: faults with place and mend, and what is no reading, counted.

import { type LeftOut, byKey, isSupply } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import {
  type ImportResult,
  faultsToMend,
  keptOutFaults,
  keptOutRest,
  slipsOf,
} from "../../commands/import-steps/import-result.ts";
import { mendLines as commandLines } from "../faults.ts";
import { mostTold, restOf, restText } from "../rest-of-faults.ts";
import { wrapText } from "../table.ts";

const shownOfMany = 3;
const indent = "    ";
const mostRemarks = 3;

export interface LeftOptions {
  readonly width: number;
  /** All of them, or the first few. */
  readonly detail: "all" | "few";
}

/** Two lines a fault: the place with what was found, and the mend. */
export const leftLines = (result: ImportResult, options: LeftOptions): readonly string[] =>
  listed("left out", keptOutFaults(result), options, keptOutRest(result));

/** Stands over what comes in and has to be mended after. */
export const toMendFirst = "to be mended before show and history can judge";

export const mendLines = (result: ImportResult, options: LeftOptions): readonly string[] =>
  listed(toMendFirst, faultsToMend(result), options);

/** Stands over readings that look mistyped, in a dry run and after. */
export const worthALook = "worth a look";

export const slipLines = (result: ImportResult, options: LeftOptions): readonly string[] =>
  listed(
    result.state === "nothing new" ? worthALook : `${worthALook} before --write`,
    slipsOf(result),
    options,
  );

const listed = (
  title: string,
  faults: readonly Fault[],
  { width, detail }: LeftOptions,
  untold: ReadonlyMap<string, number> = new Map(),
): readonly string[] => {
  if (faults.length === 0) return [];
  const folded =
    detail === "all" ? faults.slice(0, mostTold).map((fault) => [fault] as const) : foldedFaults(faults);
  // a line that counts one more costs what the one would
  const most = detail === "all" || folded.length === shownOfMany + 1 ? folded.length : shownOfMany;
  const shown = folded.slice(0, most);
  const told = shown.reduce((sum, { length }) => sum + length, 0);
  const rest = restOf(detail === "all" ? faults.slice(mostTold) : [], untold);
  const more = faults.length - told + (rest?.count ?? 0);
  const restLines = rest === undefined ? [] : wrapText(restText(rest), width);
  const upTo = more > mostTold ? ` shows the first ${String(mostTold)}` : "";
  const moreLines = more === 0 ? [] : [`${String(more)} more: --why${upTo}`];
  return [
    title,
    ...shown.flatMap((alike) => oneFault(alike, width)),
    ...(detail === "all" ? restLines : moreLines),
  ];
};

type Alike = readonly [Fault, ...Fault[]];

/** Faults that say the same of several places, such as a name in many rows, stand together. */
const foldedFaults = (faults: readonly Fault[]): readonly Alike[] => [
  ...byKey(faults, ({ code, found, mend }) => [code, found, mend].join("\n")).values(),
];

const oneFault = ([fault, ...others]: Alike, width: number): readonly string[] => {
  const { file, line, column, found, expected, mend } = fault;
  const place = [file, line, column].filter((part) => part !== undefined).join(":");
  const last = others.at(-1)?.line;
  const also =
    others.length === 0
      ? ""
      : ` (and ${String(others.length)} more like it${last === undefined ? "" : `, to line ${String(last)}`})`;
  return [
    ...wrapText(`${place} ${found}${also}`, width),
    ...(/\b(?:these|them)\b/.test(mend) ? wrapText(`expected ${expected}`, width, indent) : []),
    ...commandLines(mend, width),
  ];
};

const names: Readonly<Record<Exclude<LeftOut["why"], "fault">, readonly [one: string, many: string]>> = {
  summary: ["average or total", "averages or totals"],
  header: ["heading again", "headings again"],
  map: ["place that the map leaves out", "places that the map leaves out"],
  empty: ["row without a reading", "rows without a reading"],
};

/** `no readings: 1 average or total (row 6), 2 headings again (rows 40, 80)`; empty where there is nothing of the kind. */
export const noReadingsText = ({ left, moreLeft }: Pick<ImportResult, "left" | "moreLeft">): string => {
  const kinds = (["summary", "header", "map", "empty"] as const).flatMap((kind) => {
    const own = left.filter(({ why }) => why === kind);
    if (own.length === 0) return [];
    const rows = [...new Set(own.map(({ row }) => row))];
    const count = moreLeft.reduce((sum, { why, places }) => sum + (why === kind ? places : 0), own.length);
    const listed = rows.length > 4 ? `${rows.slice(0, 3).join(", ")} …` : rows.join(", ");
    const [one, many] = names[kind];
    return [`${String(count)} ${count === 1 ? one : many} (row${rows.length === 1 ? "" : "s"} ${listed})`];
  });
  return kinds.length === 0 ? "" : `not readings: ${kinds.join("; ")}`;
};

/** `not read: columns C RPM, D Volts; …`; empty where every column is. */
export const unreadText = ({ unread, map }: ImportResult): string => {
  if (unread.length === 0) return "";
  const named = unread.map(({ column, heading }) =>
    [column, heading].filter((part) => part !== "").join(" "),
  );
  const supplies = unread
    .filter(({ heading }) => isSupply(heading) && !/mpa/i.test(heading))
    .map(({ column, heading }) => `"${supplyEntry(heading, map)}": { "column": "${column}" }`);
  const isSaid = map.unit !== undefined && "fixed" in map.unit;
  const others = isSaid ? "" : " (or _kPa, _bar)";
  const entry =
    supplies.length === 0
      ? ""
      : `; to read it, in the map: "conditions": { ${supplies.join(", ")} }${others}`;
  return `not read: column${named.length === 1 ? "" : "s"} ${named.join(", ")}${entry}`;
};

/** The column of tests.csv for a supply, or a master's reading, in the unit of the readings. */
const supplyEntry = (heading: string, { unit }: ImportResult["map"]): string => {
  const said = unit !== undefined && "fixed" in unit ? unit.fixed : "psi";
  if (heading.includes("%")) return "master_percent";
  const name = /master/i.test(heading) ? "master" : "regulated";
  return `${name}_${["kPa", "bar"].includes(said) ? said : "psi"}`;
};

/** `remarks without a reading stay out: row 6 "head off"`; empty where there is none. */
export const remarksText = ({ remarks }: ImportResult, { detail }: LeftOptions): string => {
  if (remarks.length === 0) return "";
  const shown = detail === "all" ? remarks : remarks.slice(0, mostRemarks);
  const more = remarks.length - shown.length;
  const listed = shown.map(({ row, text }) => `row ${String(row)} ${JSON.stringify(text)}`).join(", ");
  const rest = more === 0 ? "" : ` and ${String(more)} more`;
  return `remarks beside no reading stay out: ${listed}${rest}; \`sealtrend note\` takes them`;
};
