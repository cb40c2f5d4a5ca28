import { isIsoDate, type Problem } from "@sealtrend/core/parts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseTable } from "../../../packages/core/src/record/csv.ts";
import { requireColumns, type RowView, viewTable } from "../../../packages/core/src/record/row-view.ts";

/** One row of one column, seen, with the problems noted while reading it. */
const seen = <T>(cell: string, look: (row: RowView) => T, delimiter = ";") => {
  const problems: Problem[] = [];
  const text = `a${delimiter}b\n${cell}${delimiter}y\n`;
  const [row] = viewTable(parseTable(text, "f.csv").table, problems).rows;
  if (row === undefined) throw new Error("no row");
  return { value: look(row), problems };
};
const metres = { of: "height in m", least: -500, most: 6_000 };

describe("dates", () => {
  test.each([
    ["2026-05-03", true],
    ["2024-02-29", true],
    ["2000-02-29", true],
    ["1900-02-29", false],
    ["2026-02-29", false],
    ["2026-04-31", false],
    ["2026-13-01", false],
    ["2026-00-10", false],
    ["2026-01-00", false],
    ["1899-12-31", false],
    ["2101-01-01", false],
    ["2026-5-3", false],
    ["2026-05-03T10:00", false],
  ])("%s is a day of 1900 to 2100: %s", (text, is) => {
    expect(isIsoDate(text)).toBe(is);
  });

  test("every day that a calendar has is a date, and none besides", () => {
    // the calendar of the language, by way of the day number
    fc.assert(
      fc.property(fc.integer({ min: -25_567, max: 47_846 }), (day) => {
        expect(isIsoDate(new Date(day * 86_400_000).toISOString().slice(0, 10))).toBe(true);
      }),
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 1900, max: 2100 }),
        fc.integer({ min: 0, max: 99 }),
        fc.integer({ min: 0, max: 99 }),
        (y, m, d) => {
          const text = `${String(y)}-${String(m).padStart(2, "0")}-${String(d).padStart(2, "0")}`;
          const day = new Date(Date.UTC(y, m - 1, d));
          expect(isIsoDate(text)).toBe(day.getUTCMonth() === m - 1 && day.getUTCDate() === d);
        },
      ),
    );
  });

  test.each([
    ["13/05/2026", "write 2026-05-13"],
    ["05/13/2026", "write 2026-05-13"],
    ["03/05/2026", "write 2026-05-03 or 2026-03-05"],
    ["05/05/2026", "write 2026-05-05"],
    ["3.5.2026", "write 2026-05-03"],
    ["3.5.26", "write 2026-05-03"],
    ["2026/5/3", "write 2026-05-03"],
    ["2026-02-30", "write the day that is meant, as year-month-day"],
    ["yesterday", "write the day that is meant, as year-month-day"],
  ])("%s is not taken, and what it can mean is offered", (text, mend) => {
    const { value, problems } = seen(text, (row) => row.date("a"));
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([{ code: "date-bad", line: 2, column: 1, mend }]);
  });

  test("two meanings are said to be two", () => {
    expect(seen("03/05/2026", (row) => row.date("a")).problems[0]?.found).toBe(
      'the date "03/05/2026" can be read two ways',
    );
  });
});

describe("numbers with a mark before three digits", () => {
  const number = (cell: string, delimiter: string) => seen(cell, (row) => row.number("a", metres), delimiter);

  test("are refused where both readings are within bounds", () => {
    for (const [cell, delimiter] of [
      ["1,234", ";"],
      ["1.234", ";"],
      ["1,234", "\t"],
      ['"1,234"', ","],
    ] as const) {
      const { value, problems } = number(cell, delimiter);
      expect(value).toBeUndefined();
      expect(problems).toMatchObject([
        { code: "number-two-ways", mend: "write 1234 for the large one, 1.2340 for the small one" },
      ]);
    }
  });

  test("the way out that is offered is taken, in every file", () => {
    for (const delimiter of [",", ";", "\t"]) {
      expect(number("1.2340", delimiter)).toEqual({ value: 1.234, problems: [] });
      expect(number("1234", delimiter)).toEqual({ value: 1234, problems: [] });
    }
    // 1.230 is 1.23: its way out keeps the three digits and adds one
    expect(number("1,230", ";").problems[0]?.mend).toBe(
      "write 1230 for the large one, 1.2300 for the small one",
    );
  });

  test("a point is decimal in a file that has commas between its cells", () => {
    expect(number("1.234", ",")).toEqual({ value: 1.234, problems: [] });
  });

  test("only one reading within bounds is the one that is meant", () => {
    const speed = { of: "speed", least: 20, most: 2_000 };
    const bars = { of: "bar", least: 0, most: 200 };
    expect(seen("1,200", (row) => row.number("a", speed))).toEqual({ value: 1_200, problems: [] });
    expect(seen("9,125", (row) => row.number("a", bars))).toEqual({ value: 9.125, problems: [] });
  });
});

test("an empty cell and an x are no number, and no fault", () => {
  for (const cell of ["", "x", "X", " "])
    expect(seen(cell === "" ? '""' : cell, (row) => row.number("a", metres), ",")).toMatchObject({
      value: undefined,
    });
  expect(seen("x", (row) => row.number("a", metres)).problems).toEqual([]);
});

test("a word is taken in any case; another is refused and the nearest suggested", () => {
  expect(seen("WARM", (row) => row.word("a", ["warm", "cold"])).value).toBe("warm");
  expect(seen("wram", (row) => row.word("a", ["warm", "cold"])).problems).toMatchObject([
    { mend: "write warm" },
  ]);
});

test("blanks around a cell do not count, not even those that do not break", () => {
  expect(seen("\u00a0 warm\u202f", (row) => row.text("a")).value).toBe("warm");
});

test("a fault behind a line break within a cell is placed on its own line", () => {
  const problems: Problem[] = [];
  const text = 'note,a\n"two\nlines",many\n';
  const [row] = viewTable(parseTable(text, "f.csv").table, problems).rows;
  row?.number("a", metres);
  expect(problems).toMatchObject([{ line: 3, column: 8, excerpt: { text: 'lines",many', from: 8, to: 11 } }]);
});

test("the columns that are missing are named all at once, with the first line to write", () => {
  const problems: Problem[] = [];
  const view = viewTable(parseTable("a,b\n", "f.csv").table, problems);
  expect(requireColumns(view, ["a", "date", "c"], problems)).toBe(false);
  expect(problems).toMatchObject([
    { found: 'there are no columns "date", "c"', mend: "make this the first line: a,b,date,c" },
  ]);
  expect(requireColumns(view, ["b", "a"], [])).toBe(true);
});
