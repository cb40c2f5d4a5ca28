// findings.csv, bounds.csv and finding-NAME.csv: how findings lean on one another, where the classes of a graded one lie,
// and how likely each class is with each cause.

import type { Problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { soundCause } from "../model/known-causes.ts";
import { readChances } from "./chances.ts";
import {
  type ClassShape,
  type Column,
  type Faults,
  type Finding,
  type FindingName,
  faultStatuses,
  findingNames,
} from "./faults.ts";
import { findingClasses, gradedFindings } from "./finding-classes.ts";
import { type CauseNames, rowForEachCause } from "./cause-rows.ts";
import { isEmpty, neededNumber, partOf, readOrigin } from "./cells.ts";
import { needNames, rowForEach, rowsByName } from "./rows.ts";
import { type SheetTexts, openSheet } from "./sheet.ts";
import { valueForEach } from "./value-for-each.ts";

const kinds = ["size", "oil"] as const;

/** A sound cylinder shows any class now and then: what could never be found could not be reckoned with once it is. */
const leastOfSound = 1e-6;

/** The name of the sheet with the chances of a finding. */
export const findingSheet = (name: FindingName): string => `finding-${name}.csv`;

/** @param causes - in the order of the columns to give */
export const readFindings = (
  texts: SheetTexts,
  causes: CauseNames,
  problems: Problem[],
): Faults["findings"] | undefined => {
  const leaning = readKinds(texts, problems);
  const shapes = readShapes(texts, problems);
  const columns = new Map(findingNames.map((name) => [name, readColumns(texts, name, { causes, problems })]));
  return valueForEach(findingNames, (name): Finding | undefined => {
    const classes: readonly string[] = findingClasses[name];
    const ofCauses = columns.get(name);
    const kind = leaning?.get(name);
    if (ofCauses === undefined || kind === undefined || shapes === undefined) return undefined;
    return {
      name,
      classes,
      shapes: gradedFindings.includes(name)
        ? classes.flatMap((word) => shapes.get(`${name}: ${word}`) ?? [])
        : [],
      ...(kind === "alone" ? {} : { dependence: kind }),
      columns: ofCauses,
    };
  });
};

const readKinds = (
  texts: SheetTexts,
  problems: Problem[],
): ReadonlyMap<FindingName, (typeof kinds)[number] | "alone"> | undefined => {
  const sheet = openSheet(texts, "findings.csv", ["finding", "kind"], problems);
  if (sheet === undefined) return undefined;
  return rowForEach(sheet, "finding", findingNames, (row) =>
    row.text("kind") === "" ? "alone" : row.neededWord("kind", kinds),
  );
};

const readShapes = (texts: SheetTexts, problems: Problem[]): ReadonlyMap<string, ClassShape> | undefined => {
  const columns = ["finding", "class", "low", "high", "middle", "deviation"];
  const sheet = openSheet(texts, "bounds.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const nameOf = (row: RowView): string | undefined => {
    const finding = row.neededWord("finding", gradedFindings);
    if (finding === undefined) return undefined;
    const word = row.neededWord("class", findingClasses[finding]);
    return word === undefined ? undefined : `${finding}: ${word}`;
  };
  const named = rowsByName(sheet, "class", nameOf, (row) => {
    const shape = readShape(row);
    return shape === undefined ? undefined : { shape, row };
  });
  const wanted = gradedFindings.map((name) => findingClasses[name].map((word) => `${name}: ${word}`));
  needNames(sheet, "class", wanted.flat(), named);
  for (const ofOne of wanted) noteOrder(ofOne.flatMap((name) => named.rows.get(name) ?? []));
  return new Map([...named.rows].map(([name, { shape }]) => [name, shape]));
};

const readShape = (row: RowView): ClassShape | undefined => {
  const least = row.text("finding").toLowerCase() === "leak" ? 0.01 : -1;
  const filled = (...names: readonly string[]): number =>
    names.filter((name) => row.text(name) !== "").length;
  if (filled("low", "high") < Math.max(1, filled("middle", "deviation"))) {
    const isAlone = areEmpty(row, ["low", "high"], "in a row with middle and deviation");
    const middle = neededNumber(row, "middle", partOf("the middle", least, 100));
    const deviation = neededNumber(row, "deviation", partOf("the deviation", 0.001, 10));
    return middle === undefined || deviation === undefined || !isAlone
      ? undefined
      : { kind: "around", middle, deviation };
  }
  const low = neededNumber(row, "low", partOf("the low bound", least, 100));
  const high = neededNumber(row, "high", partOf("the high bound", least, 100));
  const isAlone = areEmpty(row, ["middle", "deviation"], "in a row with low and high");
  return low === undefined || high === undefined || !isAlone ? undefined : { kind: "between", low, high };
};

const areEmpty = (row: RowView, columns: readonly string[], where: string): boolean =>
  columns.map((column) => isEmpty(row, column, where)).every(Boolean);

/** Bounds rise within a class and from class to class; a class round a middle stands between any two. */
const noteOrder = (classes: readonly { readonly shape: ClassShape; readonly row: RowView }[]): void => {
  let before = "";
  let end = -Infinity;
  for (const { shape, row } of classes) {
    if (shape.kind === "around") continue;
    const { low, high } = shape;
    if (low < end) row.fault("low", "bounds-order", { kind: "class", low, before, end });
    if (high <= low) row.fault("high", "bounds-order", { kind: "within", low, high });
    before = row.text("class");
    end = high;
  }
};

const readColumns = (
  texts: SheetTexts,
  name: FindingName,
  { causes, problems }: { readonly causes: CauseNames; readonly problems: Problem[] },
): readonly Column[] | undefined => {
  const classes: readonly string[] = findingClasses[name];
  const columns = ["cause", ...classes, "status", "link", "source"];
  const sheet = openSheet(texts, findingSheet(name), columns, problems);
  if (sheet === undefined) return undefined;
  const rows = rowForEachCause(sheet, causes, (row, code): Column | undefined => {
    const chances = readChances(row, classes, code === soundCause ? leastOfSound : 0);
    const origin = readOrigin(row);
    const link = row.neededWord("link", faultStatuses);
    return chances === undefined || origin === undefined || link === undefined
      ? undefined
      : { chances, link, source: origin.source };
  });
  return rows === undefined ? undefined : causes.codes.flatMap((code) => rows.get(code) ?? []);
};
