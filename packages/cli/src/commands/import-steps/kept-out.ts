// Why a test of the sheet that was read well does not go into the logbook.

import { type Engine, type ImportedTest, type Test, figureLike, isSameFigure } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";
import { readingPlace } from "./reading-place.ts";

const placeOf = (test: ImportedTest) => readingPlace(test, 0);

const joinedKinds = ({ rows }: ImportedTest): string => [...new Set(rows.map(({ what }) => what))].join(", ");

/** A test whose day is recorded with other figures, at the first that differs. @param there - the recorded test  @param file - where
 *  that stands */
export const differsFault = (
  test: ImportedTest,
  there: Test,
  { engine, file }: { readonly engine: Engine; readonly file: string },
): Fault => {
  const near = nearestRow(test, there, engine);
  return {
    code: "import-differs",
    severity: "error",
    found: `${joinedKinds(test)} of ${test.engine} on ${test.date} is recorded with other figures: ${there.id} in ${file}`,
    expected: "the figures that are recorded, or a day of its own",
    mend: `if the sheet is right: ${amendLine(test, there, near)}; if both are true, add --again`,
    ...readingPlace(test, near?.row ?? 0, near?.differing[0]?.label),
  };
};

interface NearRow {
  /** Which of the sheet's test. */
  readonly row: number;
  readonly what: string;
  /** Of the recorded row. */
  readonly take: number;
  readonly differing: readonly { readonly label: string; readonly to: string }[];
}

/** Of the rows that differ the pair that does so least. What is recorded as not taken is filled by the next import. */
const nearestRow = (test: ImportedTest, there: Test, engine: Engine): NearRow | undefined => {
  const others = test.rows.flatMap(({ what, unit, cells }, at) =>
    there.rows
      .filter((row) => row.what === what && (row.unit === "%") === (unit === "%"))
      .map(({ take, cells: recorded, unit: own }) => {
        const differing = test.cylinders.flatMap((label, i) => {
          const one = recorded[engine.cylinders.indexOf(label)] ?? { kind: "not-taken" };
          const to = cells[i] ?? "x";
          if (one.kind === "not-taken" || isSameFigure([to, unit], [one.text, own])) return [];
          return [{ label, to: figureLike([to, unit], [one.text, own]) }];
        });
        return { row: at, what, take, differing };
      }),
  );
  const [near] = others
    .filter(({ differing }) => differing.length > 0)
    .sort((a, b) => a.differing.length - b.differing.length);
  return near;
};

/** The command that makes the record say what the sheet says in one reading. */
const amendLine = (test: ImportedTest, there: Test, near: NearRow | undefined): string => {
  const [cell, ...further] = near?.differing ?? [];
  if (near === undefined || cell === undefined)
    return `look at what stands there, ${typedLine(["show", test.engine, "--why"])}, and mend it with sealtrend amend`;
  const pick = ["--what", near.what, ...(near.take === 1 ? [] : ["--take", String(near.take)])];
  const to = ["--cylinder", cell.label, "--to", cell.to, "--because", "sheet"];
  const line = typedLine(["amend", test.engine, "--test", there.id, ...pick, ...to]);
  return further.length === 0
    ? line
    : `${line}, and so on with ${further.map(({ label, to: figure }) => `--cylinder ${label} --to ${figure}`).join(", ")}`;
};

/** @param labels - of the engine as it is recorded */
export const cylindersFault = (test: ImportedTest, labels: readonly string[]): Fault => ({
  code: "import-cylinders",
  severity: "error",
  found: `${test.engine} has cylinders ${labels.join(" ")}, the sheet has ${test.cylinders.join(" ")}`,
  expected: "labels that the engine has",
  mend: `name them so in the map, or: ${typedLine(["engine", "set", test.engine, "cylinders", [...new Set([...labels, ...test.cylinders])].join(" ")])}`,
  ...placeOf(test),
});

/** @param file - the file of the engine that cannot be read without a fault */
export const unreadableFault = (test: ImportedTest, file: string): Fault => ({
  code: "import-engine-faulty",
  severity: "error",
  found: `${file} has faults, so nobody can tell what of ${test.engine} is recorded already`,
  expected: "an engine whose readings can be read",
  mend: `sealtrend proofread ${test.engine}`,
  ...placeOf(test),
});

/** @param fault - why no such engine can be begun */
export const newEngineRefused = (test: ImportedTest, fault: Fault): Fault => ({
  ...fault,
  mend: `${fault.mend}; the map's list of engines says what each is called`,
  ...placeOf(test),
});
