// The leak-down on the screen of `show`: its rows, and what stands beside them in words.

import type { LeakPart, LeakValue, TestAssessment } from "@sealtrend/core/parts";
import type { ColumnsRow } from "../table.ts";
import { explainedText } from "./show-leak-explained.ts";
import { fixed, joined, percent, sentence } from "../words.ts";

const noName = "no name";

/** Per cent lost; the hole that leaks as much, where the tester tells; the share of the master orifice of that day. */
export const leakRows = (assessment: TestAssessment): readonly ColumnsRow[] =>
  assessment.cylinders.every(({ leakDown }) => leakDown === undefined)
    ? aloneRows(assessment)
    : [...lostRows(assessment), ...holeRow(assessment), ...masterRow(assessment)];

const aloneRows = ({ leak }: TestAssessment): readonly ColumnsRow[] =>
  (leak?.alone ?? []).map(({ what, lost }) => ({
    name: what === "oiled" ? "leak-down with oil lost" : "leak-down, piston lower, lost",
    unit: "%",
    cells: lost.map((part) => (part === undefined ? undefined : fixed(part * 100, 0))),
  }));

const lostRows = ({ cylinders, comparisons }: TestAssessment): readonly ColumnsRow[] => {
  const cellOf = (lost: number | undefined): string | undefined =>
    lost === undefined ? undefined : fixed(lost * 100, 0);
  const compared = comparisons.filter(({ what }) => what === "leak-down");
  const [first] = compared;
  const counts = first === undefined ? undefined : ` by ${first.counts ?? noName}`;
  return [
    {
      name: `leak-down${counts ?? ""} lost${meanOf(cylinders)}`,
      unit: "%",
      cells: cylinders.map(({ leakDown }) => cellOf(leakDown?.lost)),
      tail: counts === undefined ? undefined : "(this tester counts)",
    },
    ...compared.map(({ gauge = noName, cells }) => ({
      name: `leak-down by ${gauge} lost`,
      unit: "%",
      cells: cells.map((cell) => cellOf(cell?.value)),
      tail: "(to compare only)",
    })),
  ];
};

/** `, mean of 2` where takes were repeated. */
const meanOf = (cylinders: TestAssessment["cylinders"]): string => {
  const counts = cylinders.flatMap(({ leakDown }) => leakDown?.takesLost.length ?? []);
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  return most < 2 ? "" : `, mean of ${least === most ? "" : `${String(least)} to `}${String(most)}`;
};

const millimetres = (metres: number): string => fixed(metres * 1e3, 2);

interface Hole {
  readonly cell: string;
  /** Standard uncertainty [m]. */
  readonly doubt?: number;
}

const holeOf = ({ sizing: { judgement, byHoles } }: LeakValue): Hole | undefined => {
  if (byHoles?.kind === "measured") return { cell: millimetres(byHoles.hole), doubt: byHoles.uHole };
  if (judgement?.kind === "tight" && judgement.limit.equalHole !== undefined)
    return { cell: `<${millimetres(judgement.limit.equalHole)}` };
  if (judgement?.kind !== "measured" || judgement.figures.size === undefined) return undefined;
  const { equalHole, uEqualHole } = judgement.figures.size;
  return { cell: millimetres(equalHole), doubt: uEqualHole };
};

const holeRow = ({ cylinders }: TestAssessment): readonly ColumnsRow[] => {
  const holes = cylinders.map(({ leakDown }) => (leakDown === undefined ? undefined : holeOf(leakDown)));
  if (holes.every((hole) => hole === undefined)) return [];
  const doubts = holes.flatMap((hole) => hole?.doubt ?? []);
  const tail = doubts.length === 0 ? {} : { tail: `(± ${millimetres(Math.max(...doubts))})` };
  return [{ name: "equal hole", unit: "mm", cells: holes.map((hole) => hole?.cell), ...tail }];
};

const masterRow = ({ cylinders }: TestAssessment): readonly ColumnsRow[] => {
  const cells = cylinders.map(({ leakDown }) => shareText(leakDown?.master));
  if (cells.every((cell) => cell === undefined)) return [];
  return [{ name: "of the master", unit: "%", cells, tail: "(100 = all it allows)" }];
};

const shareText = (use: LeakValue["master"]): string | undefined => {
  switch (use?.kind) {
    case undefined:
      return undefined;
    case "margin":
      return fixed(use.margin * 100, 0);
    case "at-most":
      return `<${fixed(use.margin * 100, 0)}`;
    case "span":
      return fixed(50 * (use.low + use.high), 0);
    case "beyond":
      return ">100";
  }
};

/** What the dials could not show, what oil did, and whether the leak explains the cranking reading. */
export const leakText = (assessment: TestAssessment): string =>
  assessment.trust.code === "void"
    ? ""
    : [
        ...tightText(assessment),
        ...holesText(assessment),
        ...(assessment.leak?.parts ?? []).map(partText),
        ...explainedText(assessment),
      ].join(" ");

const tightText = ({ cylinders }: TestAssessment): readonly string[] => {
  const tight = cylinders.filter(({ leakDown }) => leakDown?.sizing.judgement?.kind === "tight");
  const [first] = tight;
  if (first === undefined) return [];
  const labels = joined(tight.map(({ label }) => label));
  return tight.length === 1
    ? [`${labels} is tighter than these dials can show.`]
    : [
        `${tight.length > 2 && tight.length === cylinders.length ? "All" : sentence(labels)} are tighter than these dials can show: no order among them.`,
      ];
};

/** Cylinders whose hole the open holes of known size do not tell. */
const holesText = ({ cylinders }: TestAssessment): readonly string[] => {
  const labels = (kind: "outside" | "contradictory"): readonly string[] =>
    cylinders.flatMap(({ label, leakDown }) => (leakDown?.sizing.byHoles?.kind === kind ? [label] : []));
  const [outside, contradictory] = [labels("outside"), labels("contradictory")];
  return [
    ...(outside.length === 0
      ? []
      : [
          `${sentence(joined(outside))} ${outside.length === 1 ? "lies" : "lie"} outside what the open holes of known size span: no hole is told.`,
        ]),
    ...(contradictory.length === 0
      ? []
      : ["The open holes of known size contradict one another or the supply: no hole is told."]),
  ];
};

/** @source oil and a lower piston: trade article (handbook/trade.md A10) */
const partText = ({ label, what, lost, then, share = 0, shown, isLessThanHalf }: LeakPart): string => {
  const where = what === "oiled" ? "With oil" : "With its piston lower";
  const read = `${where} ${label} lost ${percent(then)} instead of ${percent(lost)}`;
  if (shown === "cannot-tell") return `${read}: ${untold[what]}.`;
  if (shown === "no") return `${read}: ${isLessThanHalf ? unchanged[what] : tooNear[what]}.`;
  if (share < 0) return `${read}, more than before: read it again.`;
  const much = share > 0.85 ? "nearly all" : `about ${percent(Math.round(share * 20) / 20)}`;
  return what === "oiled"
    ? `${read}: oil closed ${much} of the leak, the part of the rings${share > 0.85 ? "" : "; the rest goes elsewhere"}.`
    : `${read}, ${much} less of a leak: that points to a bore worn at the top.`;
};

const unchanged = {
  oiled: "no change that these dials show, so the rings are not the larger part",
  lower: "no change that these dials show: rings, piston or valves, not a bore worn at the top",
} as const;

/** Half of the leak may have gone without showing. */
const tooNear = {
  oiled: "these dials cannot tell how much of the leak the oil closed",
  lower: "these dials cannot tell whether it leaks less there",
} as const;

const untold = {
  oiled: "too tight, or too open, to tell what oil did",
  lower: "too tight, or too open, to tell what the bore did",
} as const;
