// Every text of up to four signs that a person or a spreadsheet could take for a number: what is accepted is exactly what the
// grammar below says, and no digit that was typed is ever lost. Then texts of up to six signs, where a comma may be one of
// thousands.
//   node tests/hard/number-grammar.mjs
//
// The grammar, stated here once more and without the patterns of the program (our contract, sections 3 and 4):
// a number is a sign or none, digits, and behind them either nothing or one mark (. or ,) and digits; or a sign or none, a point
// and digits. A cell is a number, or `>` and a number, or a number and `?`, or all three; nothing, `x`, `-`, `?` are "not taken".
// A reading typed in a list is a cell without a minus; a comma before exactly three digits is refused there.

import { begin } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";

const program = await loadProgram();
const part = begin();

const isDigits = (text) => text !== "" && [...text].every((sign) => sign >= "0" && sign <= "9");
const unsigned = (text) => (text.startsWith("+") || text.startsWith("-") ? text.slice(1) : text);

const isNumber = (text) => {
  const body = unsigned(text);
  if (isDigits(body)) return true;
  const marks = [...body].filter((sign) => sign === "." || sign === ",");
  if (marks.length !== 1) return false;
  const [before, after] = body.split(marks[0]);
  return isDigits(after) && (isDigits(before) || (before === "" && marks[0] === "."));
};
/** Nine digits and six behind the mark are the most; no text here is as long. */
const numberIn = (text) => (isNumber(text.trim()) ? text.trim() : undefined);

const inner = (cell) => {
  const from = cell.startsWith(">") ? 1 : 0;
  const to = cell.endsWith("?") && cell.length > from ? cell.length - 1 : cell.length;
  return cell.slice(from, to).trim();
};
const isNotTaken = (cell) => ["", "x", "X", "-", "?"].includes(cell);

/** What a number says, as digits: no sign `+`, no zeros that change nothing. */
const digits = (text) => {
  const [whole, part_ = ""] = unsigned(text.trim()).replace(",", ".").split(".");
  const head = whole.replace(/^0+/, "");
  const tail = part_.replace(/0+$/, "");
  const minus = text.trim().startsWith("-") && head + tail !== "" ? "-" : "";
  return `${minus}${head === "" ? "0" : head}${tail === "" ? "" : `.${tail}`}`;
};
const withoutMark = (text) => digits(text.trim().replace(/[.,]/, ""));
const printed = (value) => (Object.is(value, -0) ? "0" : String(value)).replace(/^(-?)0+(?=\d)/, "$1");
const plainly = (value) =>
  String(value).includes("e") ? value.toFixed(8).replace(/\.?0+$/, "") : printed(value);

const faultOfNumber = (text) => {
  const expected = numberIn(text);
  const read = program.readNumber(text);
  if (read.ok !== (expected !== undefined))
    return read.ok ? "is taken for a number" : "is refused as a number";
  if (!read.ok) return read.fault === undefined ? "is refused without a reason" : undefined;
  if (plainly(read.value) !== digits(expected)) return `is read as ${String(read.value)}`;
  return read.thousands !== undefined && plainly(read.thousands.value) !== withoutMark(expected)
    ? `may be ${String(read.thousands.value)}`
    : undefined;
};

const bounds = { least: -1e9, most: 1e9, of: "a number" };
const faultOfCell = (text, delimiter) => {
  const cell = text.trim();
  const said = [];
  const read = program.readReadingCell(cell, bounds, delimiter, "c1", (value) => value, (code) => void said.push(code));
  if (isNotTaken(cell)) return read?.kind === "not-taken" ? undefined : "is not read as not taken";
  const core = inner(cell);
  const twoWays = thousands(core) && (core.includes(",") || delimiter !== ",");
  if (!isNumber(core)) return said.length === 1 && read === undefined ? undefined : "is taken for a reading";
  if (twoWays) return said[0] === "number-two-ways" ? undefined : "has two meanings and is taken";
  if (read?.kind !== "reading") return "is refused as a reading";
  const marks = read.pegged === cell.startsWith(">") && read.doubtful === cell.endsWith("?");
  if (!marks) return "has lost a mark";
  return plainly(read.value) === digits(core) && read.text === cell ? undefined : `is read as ${String(read.value)}`;
}; // prettier-ignore

/** One to three digits that do not begin with 0, a mark, three digits. */
const thousands = (text) => {
  const body = unsigned(text);
  const at = body.length - 4;
  const mark = body[at];
  const head = body.slice(0, Math.max(0, at));
  return (mark === "." || mark === ",") && isDigits(head) && head.length <= 3 && head[0] !== "0" && isDigits(body.slice(at + 1));
}; // prettier-ignore

/** A list for an engine of one cylinder: no blank inside, no minus, at most five digits and three behind the mark. */
const faultOfList = (text) => {
  const read = program.splitReadings(text, 1);
  const words = text.trim();
  const bare = words.startsWith(">") ? words.slice(1) : words;
  const body = bare.endsWith("?") ? bare.slice(0, -1) : bare;
  const isReading = isNumber(body) && !body.startsWith("-") && body === body.trim() && !/\s/.test(words);
  const [whole, behind = ""] = unsigned(body).split(/[.,]/);
  const open = body.includes(",") && thousands(body);
  const taken =
    (isReading && whole.length <= 5 && behind.length <= 3 && !open) || ["x", "-", "?"].includes(words);
  if (!read.ok) return taken && !/[;/]/.test(words) ? "is refused as a list" : undefined;
  if (!taken) return `is taken for a list: ${JSON.stringify(read.cells)}`;
  return read.cells.length === 1 && read.cells[0] === words ? undefined : "is changed";
};

const cells = { count: 0 };
const sweep = (alphabet, longest) => {
  const grow = (text) => {
    cells.count += 1;
    part.tried(JSON.stringify(text), faultOfNumber(text));
    part.tried(`cell ${JSON.stringify(text)}`, faultOfCell(text, cells.count % 2 === 0 ? "," : ";"));
    part.tried(`list ${JSON.stringify(text)}`, faultOfList(text));
    if (text.length < longest) for (const sign of alphabet) grow(`${text}${sign}`);
  };
  grow("");
};
sweep("0123456789.,+-ex ?>", 4);
sweep("01.,-?>", 6);
part.end({ numbers: cells.count });
