// The screen of `demo`: that it is invented, every engine in a line, then the one that has a story.

import { type PressureUnit, type TestAssessment, writeNumber } from "@sealtrend/core";
import type { DemoAnswer } from "../documents/demo-document.ts";
import { showHeadline } from "./show/show-headline.ts";
import { type ColumnsRow, columns, grid, wrapText } from "./table.ts";
import { placesRead } from "./units.ts";
import { count, joined, percent } from "./words.ts";

/** In how many tests running a cylinder stood out, and the day of the first of them. */
export interface FlaggedSince {
  readonly label: string;
  readonly tests: number;
  readonly date: string;
}

export interface DemoShown extends Omit<DemoAnswer, "folder"> {
  readonly where: string;
  readonly since: FlaggedSince | undefined;
}

export interface DemoOptions {
  readonly unit: PressureUnit;
  readonly width: number;
}

export const demoScreen = (
  { where, state, engines, star, since, next }: DemoShown,
  options: DemoOptions,
): readonly string[] => {
  const { width } = options;
  const laid = state === "new" ? `laid out in ${where}` : `as it stands in ${where}`;
  const rows = engines.map((assessment) => {
    const { id, name } = assessment.record.engine;
    return [id, inShort(assessment), name.replace(/ \(invented\)$/, "")];
  });
  return [
    ...wrapText(`Demo, ${laid}: engines, readings and people are all invented.`, width),
    "",
    ...grid(rows, ["left", "left", "left"], { width }),
    ...(star === undefined ? [] : ["", ...starLines(star, since, options)]),
    "",
    ...next.map((line, i) => `${i === 0 ? "next   " : "       "}${line}`),
  ];
};

/** What the latest test says, in a few words. */
const inShort = ({ trust, cylinders, spread }: TestAssessment): string => {
  if (trust.code === "void") return "last test tells nothing";
  const worst = cylinders.filter(({ standing }) => standing === "lagging" || standing === "suspect");
  const under = Math.max(...worst.map(({ belowOthers = 0 }) => belowOthers));
  if (worst.length > 0) {
    const labels = joined(worst.map(({ label }) => label));
    const verb = worst.every(({ standing }) => standing === "suspect")
      ? "suspect"
      : worst.length === 1
        ? "lags"
        : "lag";
    return `${labels} ${verb}${under > 0 ? `: ${percent(under)} under the rest` : ""}`;
  }
  const even =
    cylinders.length === 1
      ? "one cylinder"
      : cylinders.length === 2
        ? "both even"
        : `all ${count(cylinders.length)} even`;
  return spread === undefined ? `${even}, leak-down` : even;
};

const starLines = (
  star: TestAssessment,
  since: FlaggedSince | undefined,
  options: DemoOptions,
): readonly string[] => {
  const { width, unit } = options;
  const { record, test, cylinders } = star;
  return [
    ...wrapText(`${record.engine.id}: ${showHeadline(star)}`, width),
    "",
    ...columns({
      head: test.id,
      labels: cylinders.map(({ label }) => label),
      rows: rowsOf(star, unit),
      width,
    }),
    "",
    ...wrapText(whyBelieve(star, since), width),
  ];
};

const rowsOf = (star: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const places = placesRead(star, unit);
  const row = (name: string, kind: "dry" | "wet"): ColumnsRow[] =>
    star.cylinders.some(({ pressures }) => pressures[kind] !== undefined)
      ? [
          {
            name,
            unit,
            cells: star.cylinders.map(({ pressures }) => {
              const value = pressures[kind]?.value;
              return value === undefined ? undefined : writeNumber(value, unit, places);
            }),
          },
        ]
      : [];
  const standing: ColumnsRow = {
    name: "against others",
    cells: star.cylinders.map((cylinder) => (cylinder.standing === "lagging" ? "lags" : cylinder.standing)),
  };
  return [...row("read", "dry"), ...row("with oil", "wet"), standing];
};

/** Why it is more than chance. */
const whyBelieve = ({ cylinders, trust }: TestAssessment, since: FlaggedSince | undefined): string => {
  const takes = Math.max(...cylinders.map(({ pressures }) => pressures.dry?.readings.length ?? 0));
  const reasons = [
    takes > 1 ? `each figure is the mean of ${count(takes)} readings` : "",
    since !== undefined && since.tests > 1
      ? `${since.label} stands out in ${count(since.tests)} tests running, since ${since.date.slice(0, 4)}`
      : "",
    trust.code === "trusted" ? "nothing speaks against this test" : "",
  ].filter((reason) => reason !== "");
  return reasons.length === 0 ? "" : `Why believe it: ${reasons.join("; ")}.`;
};
