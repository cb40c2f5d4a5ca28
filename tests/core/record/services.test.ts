import { readServices, startsAnew, type Work, workNames } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { engine, marked } from "./sample.ts";

const header = "date,meter,what,cylinders,new_baseline,by,note\n";
const read = (rows: string) => readServices(`${header}${rows}\n`, "services.csv", engine);
const faults = (rows: string) => marked(read(rows).problems, `${header}${rows}\n`);

/** The works whose cylinders begin a new history, as the contract lists them (design.md section 3). */
const renewing: readonly Work[] = ["valve job", "head gasket", "head off", "re-ring", "rebore", "rebuild"];

describe("which cylinders begin a new history", () => {
  test.each(workNames)("%s", (what) => {
    const { services, problems } = read(`2026-05-03,,${what},2 3,,me,`);
    expect(problems).toEqual([]);
    expect(services).toMatchObject([
      { what, cylinders: ["2", "3"], newBaseline: renewing.includes(what) ? ["2", "3"] : [] },
    ]);
    expect(startsAnew(what)).toBe(renewing.includes(what));
  });

  test("no cylinders named are all of them", () => {
    expect(read("2026-05-03,,rebuild,,,,").services).toMatchObject([
      { cylinders: ["1", "2", "3", "4"], newBaseline: ["1", "2", "3", "4"] },
    ]);
  });

  test("a stated baseline counts: none, all, or some", () => {
    expect(
      read(
        "2026-05-03,,rebuild,,none,,\n2026-05-04,,plugs,,all,,\n2026-05-05,,head off,all,1,,",
      ).services.map(({ newBaseline }) => newBaseline),
    ).toEqual([[], ["1", "2", "3", "4"], ["1"]]);
  });
});

test("labels stand in the engine's order, whatever the order and separator they are typed with", () => {
  for (const typed of ["3 1", '"3,1"', "3;1", "3 + 1", "1  3"])
    expect(read(`2026-05-03,,valve job,${typed},,,`).services[0]?.cylinders).toEqual(["1", "3"]);
});

test("meter, by and note are kept; services come by date", () => {
  const { services } = read("2026-05-03,1412,plugs,all,,shop,new ones\n2024-01-01,900.5,Oil change,,,me,");
  expect(services.map(({ date, meter, what, by, note }) => [date, meter, what, by, note])).toEqual([
    ["2024-01-01", 900.5, "oil change", "me", undefined],
    ["2026-05-03", 1412, "plugs", "shop", "new ones"],
  ]);
});

test.each([
  ["no date", ",,plugs,,,,", "date-missing@2 ,"],
  ["no work", "2026-05-03,,,,,,", "word-unknown@2 ,"],
  ["a work that is not known", "2026-05-03,,valves,,,,", "word-unknown@2 valves"],
  ["a cylinder that is not there", "2026-05-03,,plugs,5,,,", "cylinders-bad@2 5"],
  ["a range, which spreadsheets make a date of", "2026-05-03,,plugs,1-3,,,", "cylinders-bad@2 1-3"],
  ["a baseline of no cylinder", "2026-05-03,,rebuild,,yes,,", "cylinders-bad@2 yes"],
  ["a meter that is no number", "2026-05-03,14O2,plugs,,,,", "number-bad@2 14O2"],
])("%s is a fault, and the row is left out", (_, row, fault) => {
  expect(faults(row)).toEqual([fault]);
  expect(read(row).services).toEqual([]);
});
