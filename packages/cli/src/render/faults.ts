// Faults as a person reads them and as a script does: place, what was found, the line with a mark under it, what was
// expected, and a mend ready to type.

import { byText } from "@sealtrend/core/parts";
import type { Fault } from "../command.ts";
import { clean } from "./clean.ts";
import { mostTold, restOf, restText } from "./rest-of-faults.ts";
import { wrapText } from "./table.ts";
import { displayWidth } from "./width.ts";

const indent = "    ";
/** More of one kind in one column of a file than this are folded, to the first few and a count. */
const most = 5;
const shownOfMany = 3;

/** All faults, sorted by place, each ending with a newline; more than a few screens of them are counted.
 *  @param detail - `folded`: one that repeats in a column is counted after a few  @param untold - more, by their codes */
export const faultText = (
  faults: readonly Fault[],
  width: number,
  detail: "folded" | "all" = "folded",
  untold: ReadonlyMap<string, number> = new Map(),
): string => {
  const inOrder = sorted(faults);
  const lines = detail === "folded" ? kindsOf(inOrder) : inOrder.map((fault): Line => ({ fault }));
  const further = lines.slice(mostTold).flatMap((line) => ("fault" in line ? [line.fault] : line.others));
  const rest = restOf(further, untold);
  return [
    ...lines
      .slice(0, mostTold)
      .map((line) => ("fault" in line ? oneFault(line.fault, width) : `${countOf(line.others)}\n`)),
    ...(rest === undefined ? [] : wrapText(restText(rest), width).map((line) => `${line}\n`)),
  ].join("");
};

/** The document a script gets: none folded. */
export const faultDocument = (faults: readonly Fault[]): unknown => ({
  schema: "sealtrend/problems@1",
  ...toldEntries(sorted(faults)),
});

/** The first faults with the keys of sealtrend/problems@1, in the order given, and how many there are more. */
export const toldEntries = (faults: readonly Fault[]) => ({
  problems: faultEntries(faults.slice(0, mostTold)),
  more: restOf(faults.slice(mostTold)),
});

/** Faults with the keys of sealtrend/problems@1, in the order given. */
export const faultEntries = (faults: readonly Fault[]) =>
  faults.map(({ code, severity, file, line, column, found, expected, mend }) => ({
    code,
    severity,
    file,
    line,
    column,
    found,
    expected,
    mend,
  }));

const sorted = (faults: readonly Fault[]): readonly Fault[] =>
  faults.toSorted(
    (a, b) =>
      byText(a.file ?? "", b.file ?? "") ||
      (a.line ?? 0) - (b.line ?? 0) ||
      (a.column ?? 0) - (b.column ?? 0),
  );

/** A fault to show, or faults that are counted in a line. */
type Line = { readonly fault: Fault } | { readonly others: readonly Fault[] };

/** The faults to show; in place of the rest of a kind that repeats, a line with their count. */
const kindsOf = (faults: readonly Fault[]): readonly Line[] => {
  const kinds = new Map<string, Fault[]>();
  return faults
    .map((fault) => {
      const name = `${fault.code}\n${fault.file ?? ""}\n${String(cellOf(fault))}`;
      const kind = kinds.get(name) ?? [];
      kinds.set(name, kind);
      return { fault, kind, nth: kind.push(fault) };
    })
    .flatMap(({ fault, kind, nth }) => {
      if (fault.file === undefined || kind.length <= most || nth < shownOfMany) return [{ fault }];
      return nth === shownOfMany ? [{ fault }, { others: kind.slice(shownOfMany) }] : [];
    });
};

/** Which cell of its line a fault marks, by the delimiters before it that no quotes hold; 0 where it marks none. */
const cellOf = ({ excerpt }: Fault): number => {
  if (excerpt === undefined) return 0;
  const delimiter = [";", "\t"].find((sign) => excerpt.text.includes(sign)) ?? ",";
  const before = excerpt.text.slice(0, excerpt.from - 1).replace(/"[^"]*"/g, "");
  return before.split(delimiter).length - 1;
};

const countOf = (others: readonly Fault[]): string => {
  const lines = others.flatMap(({ line }) => line ?? []);
  const [first, last] = [lines[0], lines.at(-1)];
  const where =
    first === undefined
      ? ""
      : first === last
        ? `, line ${String(first)}`
        : `, lines ${String(first)} to ${String(last)}`;
  return `${clean(others[0]?.file ?? "")}: ${String(others.length)} more like it${where}`;
};

/** Where a fault is and what was found, without a mend. */
export const faultHead = (fault: Fault): string => {
  const isSaid = fault.line === undefined && fault.found.includes(fault.file ?? "");
  const place = isSaid
    ? ""
    : [fault.file, fault.line, fault.column].filter((part) => part !== undefined).join(":");
  return [place, fault.severity === "caution" ? "caution:" : "", fault.found]
    .filter((part) => part !== "")
    .join(" ");
};

const oneFault = (fault: Fault, width: number): string =>
  [
    ...wrapText(faultHead(fault), width),
    ...excerptLines(fault, width - indent.length).map((line) => indent + line),
    // whoever leaves did nothing wrong
    ...(fault.code === "left" ? [] : wrapText(`expected ${fault.expected}`, width, indent)),
    ...mendLines(fault.mend, width),
  ]
    .map((line) => `${line}\n`)
    .join("");

/** A command is never broken, or it could not be copied: it stands on a line of its own where it does not fit. */
export const mendLines = (mend: string, width: number): readonly string[] => {
  if (mend.startsWith("sealtrend ")) return [indent + clean(mend, 2000)];
  const [, lead = "", command] = /^([^]*: )((?:sealtrend|cp|mv|rm|mkdir|chmod) [^;]*)$/.exec(mend) ?? [];
  const whole = wrapText(mend, width, indent);
  return command === undefined || whole.length === 1
    ? whole
    : [...wrapText(lead, width, indent), indent + clean(command, 2000)];
};

/** The line of the file as far as it fits, and the marks under the fault. */
const excerptLines = ({ excerpt }: Fault, width: number): readonly string[] => {
  if (excerpt === undefined) return [];
  const { from, to } = excerpt;
  const text = excerpt.text.replaceAll("\t", " ");
  const at = clean(text.slice(from - 1, to), Math.max(8, Math.floor(width / 2)));
  const marks = Math.max(1, displayWidth(at));
  const room = width - marks - 1;
  const before = tail(
    text.slice(0, from - 1),
    Math.max(Math.floor(room / 2), room - displayWidth(text.slice(to))),
  );
  const after = clean(text.slice(to), Math.max(1, room - displayWidth(before) + 1));
  return [`${before}${at}${after}`, " ".repeat(displayWidth(before)) + "^".repeat(marks)];
};

/** The end of a text, in at most `columns`; what was cut off shows as `…`. */
const tail = (text: string, columns: number): string => {
  const whole = clean(text, 10_000);
  if (displayWidth(whole) <= columns) return whole;
  let kept = "";
  for (const character of [...whole].reverse()) {
    if (displayWidth(kept) + displayWidth(character) > columns - 1) break;
    kept = character + kept;
  }
  return `…${kept}`;
};
