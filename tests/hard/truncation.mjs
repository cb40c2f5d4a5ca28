// A file of fifty rows cut off at every byte, in four dialects: the rows before the cut are read as they were, and the row that
// was cut is named, or is whole but for the end of its last cell, a note.
//   node tests/hard/truncation.mjs

import { isDeepStrictEqual } from "node:util";
import { faultOfPlaces } from "./shared/judge.mjs";
import { begin } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";

const program = await loadProgram();
const part = begin();
const { engine } = program.readEngine(
  '{ "cylinders": ["1", "2", "3"], "ignition": "spark" }',
  "engine.json",
  "pump",
);

/** Two rows a test: dry and wet; the dry one has conditions and a note, in quotes where it holds a separator. */
const rows = Array.from({ length: 25 }, (_, i) => {
  const day = `${String(1998 + i)}-05-${String((i % 28) + 1).padStart(2, "0")}`;
  const dry = `${day}a|${day}|${String(i * 7)}|dry|1|psi|${String(150 - i)}.5|148|>300|22|`;
  return [`${dry}${i % 5 === 0 ? '"wärm, and; dry"' : ""}`, `${day}a|${day}||wet|1|psi|160|131?|x||`];
}).flat();
const written = [`test|date|meter|what|take|unit|c1|c2|c3|air_temp_C|note`, ...rows];

const dialects = {
  commas: (text) => text.replaceAll("|", ","),
  "semicolons, decimal commas": (text) => text.replaceAll("|", ";").replace(/(\d)\.(\d)/g, "$1,$2"),
  tabs: (text) => text.replaceAll("|", "\t"),
  "marked, carriage returns": (text) => `\uFEFF${text.replaceAll("|", ",").replaceAll("\n", "\r\n")}`,
};

const read = (text) => program.readTests(text, "tests.csv", engine, []);
/** The rows as read, by line, each with what its test holds of it. */
const byLine = ({ tests }) =>
  new Map(tests.flatMap(({ id, date, rows: own }) => own.map((row) => [row.line, { id, date, row }])));
const isText = (bytes) => program.decode(bytes)?.text;

const faultOfCut = (bytes, at, whole, header) => {
  const text = isText(bytes.subarray(0, at));
  if (text === undefined) return "refused as no text";
  const { tests, problems } = read(text);
  const place = faultOfPlaces(problems, { "tests.csv": text });
  if (place !== undefined) return place;
  const lines = text.split(/\r\n|\n|\r/);
  const ended = lines.at(-1) === "" || (bytes[at] === 0x0a && bytes[at - 1] === 0x0d);
  const cutLine = ended ? 0 : lines.length;
  // Under a first line alone, cut or not, nothing stands that could be read wrongly.
  if (lines.length === 1) return tests.length === 0 ? undefined : "a test is read from the first line";
  const found = byLine({ tests });
  for (const [line, row] of whole)
    if (line < (cutLine || lines.length) && !isDeepStrictEqual(found.get(line), row))
      return `line ${String(line)} is not what it was`;
  if (cutLine === 0) return undefined;
  const named = problems.some(({ line, severity }) => line === cutLine && severity === "error");
  if (named) return undefined;
  const reached = (lines.at(-1).match(header)?.length ?? 0) >= 10;
  const same = isDeepStrictEqual(found.get(cutLine)?.row.cells, whole.get(cutLine)?.row.cells);
  return reached && same ? undefined : `line ${String(cutLine)} was cut and nothing is said`;
};

let cuts = 0;
for (const [name, dialect] of Object.entries(dialects)) {
  const text = dialect(`${written.join("\n")}\n`);
  const bytes = Buffer.from(text);
  const whole = byLine(read(text.replace(/^\uFEFF/, "")));
  if (whole.size !== 50) part.fail(`${name}: ${String(whole.size)} rows before any cut`);
  const separator = text.includes("\t") ? /\t/g : text.includes(";c1") ? /;/g : /,/g;
  for (let at = 0; at <= bytes.length; at += 1) {
    cuts += 1;
    try {
      part.tried(`${name}, cut at byte ${String(at)}`, faultOfCut(bytes, at, whole, separator));
    } catch (error) {
      part.fail(`${name}, cut at byte ${String(at)}: throws ${error.stack}`);
    }
  }
}
part.end({ truncations: cuts });
