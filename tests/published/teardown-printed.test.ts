// Limits that makers print in two units, and numbers of main bearings: data/reference/teardown-published.csv, P15, P16, P22, P23.

import { expect, test } from "vitest";
import { misprintOf, usualJournals } from "../../packages/core/src/teardown/index.ts";
import { referenceRows } from "./reference-rows.ts";

const rows = referenceRows("teardown-published");

/** The written cells of `limit=0.10 mm; also=0.0039 in`. */
const cellsOf = (given = ""): readonly string[] => given.split(";").map((part) => part.split("=")[1] ?? "");

const printed = rows.filter(({ status }) => status === "misprint" || status === "agree");

test.each(printed.map(({ id, given, status, source }) => [id, given, status, source] as const))(
  "%s: %s: %s (%s)",
  (_id, given, status) => {
    const [mm = "", inch = ""] = cellsOf(given).map((cell) => cell.split(" ")[0] ?? "");
    const misprint = misprintOf({ text: mm, unit: "mm" }, { text: inch, unit: "in" });
    expect(misprint === undefined ? "agree" : "misprint").toBe(status);
  },
);

const counted = rows.filter(({ id }) => id === "P22");

test.each(counted.map(({ given, expected, source }) => [given, expected, source] as const))(
  "P22: %s has %s (%s)",
  (given, expected) => {
    const [layout = "", cylinders = ""] = cellsOf(given);
    const { mains } = usualJournals(layout === "V" ? "v" : "inline", Number(cylinders));
    expect(`mains=${String(mains)}`).toBe(expected);
  },
);

test("both kinds of rows are there", () => {
  expect(printed.map(({ status }) => status)).toEqual(expect.arrayContaining(["misprint", "agree"]));
  expect(counted).toHaveLength(3);
});
