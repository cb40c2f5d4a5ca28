// amend leaves every byte as it was but those of the one cell, whatever program wrote the file.

import { expect, test } from "vitest";
import { boatJson, boatTests, mendPlace, testsHeader } from "./mend-place.ts";

const semicolons = (text: string): string => text.replaceAll(",", ";");
const bom = Buffer.from([0xef, 0xbb, 0xbf]);
const because = ["--because", "paper says so"];
const cell = [
  "amend",
  "boat",
  "--test",
  "2026-05-02a",
  "--what",
  "dry",
  "--take",
  "1",
  "--cylinder",
  "4",
  "--to",
];

/** A row of the boat with these four readings. */
const row = (readings: string, note = "", unit = "psi"): string =>
  `2026-05-02a,2026-05-02,640,dry,1,red,${unit},${readings},,,,,,,,me,,${note}`;

const cases: readonly (readonly [string, Buffer, string, string, string])[] = [
  ["commas and LF", Buffer.from(boatTests), "135", "111,131", "111,135"],
  ["CRLF", Buffer.from(boatTests.replaceAll("\n", "\r\n")), "135", "111,131", "111,135"],
  ["CR alone", Buffer.from(boatTests.replaceAll("\n", "\r")), "135", "111,131", "111,135"],
  ["a byte order mark", Buffer.concat([bom, Buffer.from(boatTests)]), "135", "111,131", "111,135"],
  ["tabs", Buffer.from(boatTests.replaceAll(",", "\t")), "135", "111\t131", "111\t135"],
  ["no last line end", Buffer.from(boatTests.trimEnd()), "135", "111,131", "111,135"],
  [
    "semicolons, decimal commas and a byte order mark",
    Buffer.concat([
      bom,
      Buffer.from(
        semicolons(`${testsHeader}\n${row("A,B,C,D")}\n`)
          .replace("A;B;C;D", "8,9;8,8;8,1;9,0")
          .replaceAll("\n", "\r\n")
          .replace(";psi;", ";bar;"),
      ),
    ]),
    "9.3",
    "8,1;9,0",
    "8,1;9,3",
  ],
  [
    "a line that names the separator",
    Buffer.from(`sep=;\r\n${semicolons(boatTests).replaceAll("\n", "\r\n")}`),
    "135",
    "111;131",
    "111;135",
  ],
  [
    "quotes around every cell",
    Buffer.from(boatTests.replace(/[^,\n]+/g, '"$&"')),
    "135",
    '"111","131"',
    '"111","135"',
  ],
  [
    "a decimal comma in quotes between commas",
    Buffer.from(`${testsHeader}\n${row('"8,9","8,8","8,1","9,0"', "", "bar")}\n`),
    "9.3",
    '"9,0"',
    '"9,3"',
  ],
  [
    "blanks around the cells",
    Buffer.from(boatTests.replaceAll("111,131", "111 ,  131 ")),
    "135",
    "111 ,  131 ",
    "111 ,  135 ",
  ],
  ["an empty cell", Buffer.from(boatTests.replace("111,131", "111,")), "135", "111,,", "111,135,"],
  [
    "Windows-1252",
    Buffer.from(boatTests.replace("first note", "b\u00fcchse"), "latin1"),
    "135",
    "111,131",
    "111,135",
  ],
  [
    "a quoted note over two lines before it",
    Buffer.from(boatTests.replace("me,,\n2025", 'me,,"two\nlines"\n2025')),
    "135",
    "111,131",
    "111,135",
  ],
  [
    "a line with a stray quote mark before it",
    Buffer.from(boatTests.replace("127,126,129", '127,12"6,129')),
    "135",
    "111,131",
    "111,135",
  ],
  [
    "empty lines and columns of its own",
    Buffer.from(
      boatTests.replace("note\n", "note,mine\n\n").replace("first note", "first note,  kept as it is "),
    ),
    "135",
    "111,131",
    "111,135",
  ],
];

test.each(cases)("Only the cell changes in a file with %s", async (_, bytes, to, old, now) => {
  const place = mendPlace({ "boat/engine.json": boatJson, "boat/tests.csv": bytes });
  const { err } = await place.run([...cell, to, ...because]);
  expect(err.replace(/^.*Windows-1252.*\n/gm, "").includes("fault of sealtrend itself")).toBe(false);
  const wanted = bytes.toString("latin1").replace(old, now);
  expect(wanted).not.toBe(bytes.toString("latin1"));
  expect(place.bytes("boat/tests.csv").toString("latin1")).toBe(wanted);
  expect((await place.run(["undo"])).exit).toBe(0);
  expect(place.bytes("boat/tests.csv").equals(bytes)).toBe(true);
});

test("A row that ends early is filled up only as far as the cell that is written", async () => {
  const short = `${testsHeader}\n2026-05-02a,2026-05-02,640,dry,1,red,psi,126,125,111,131\n`;
  const place = mendPlace({ "boat/engine.json": boatJson, "boat/tests.csv": short });
  expect((await place.run(["amend", "--altitude", "350m", "--air", "20C", ...because])).exit).toBe(0);
  expect(place.text("boat/tests.csv")).toBe(short.replace("111,131", "111,131,350,,20"));
});

test("A text with the separator or a quote mark in it is quoted", async () => {
  const place = mendPlace({ "boat/engine.json": boatJson, "boat/tests.csv": boatTests });
  await place.run([
    "amend",
    "--test",
    "latest",
    "--note",
    'needle crept, "a little"',
    "--because",
    "left out, by me",
  ]);
  expect(place.text("boat/tests.csv")).toBe(boatTests.replace("first note", '"needle crept, ""a little"""'));
  expect(place.text("boat/amendments.csv")).toContain(
    'note,first note,"needle crept, ""a little""","left out, by me"\n',
  );
});

test("The trace is written in the dialect of its own file", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": boatTests,
    "boat/amendments.csv": "because;when;file;row;column;old;new\r\n",
  });
  await place.run([...cell, "135", ...because]);
  expect(place.text("boat/amendments.csv")).toBe(
    "because;when;file;row;column;old;new\r\npaper says so;2026-11-25T10:00:00;tests.csv;2026-05-02a dry take 1 by red;c4;131;135\r\n",
  );
});
