// Typed lines of an invented engine of four cylinders.

import {
  type TypedMeasurement,
  type TypingContext,
  fromSi,
  readEngine,
  readTypedLine,
  startTyping,
} from "@sealtrend/core/parts";

const read = readEngine('{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }', "engine.json", "pump");
if (read.engine === undefined) throw new Error("the engine of this test has a fault");
export const { engine } = read;

const start = startTyping("2026-03-02");

/** What several lines come to, one after the other. @throws Error at a fault */
export const typed = (...lines: readonly string[]) => {
  let context: TypingContext = start;
  const measurements: TypedMeasurement[] = [];
  for (const line of lines) {
    const one = readTypedLine(line, context, engine);
    if (one.kind === "fault") throw new Error(one.problems.map(({ found }) => found).join("\n"));
    if (one.kind === "measurements") measurements.push(...one.measurements);
    if (one.kind !== "blank") context = one.context;
  }
  return { measurements, context };
};

/** The faults of the last line, with the text that each marks. */
export const faults = (...lines: readonly string[]) => {
  const { context } = typed(...lines.slice(0, -1));
  const one = readTypedLine(lines.at(-1) ?? "", context, engine);
  if (one.kind !== "fault") throw new Error(`no fault in ${lines.at(-1) ?? ""}`);
  return one.problems.map(({ code, found, expected, mend, column, excerpt }) => ({
    code,
    found,
    expected,
    mend,
    column,
    marked: excerpt?.text.slice(excerpt.from - 1, excerpt.to),
  }));
};

/** `bore 3 top/thrust diameter 86.62 mm`, in the unit of the row. */
export const told = ({ part, label, at, quantity, value, unit }: TypedMeasurement): string => {
  const number = (si: number): string =>
    unit === undefined ? "" : String(Number(fromSi(si, unit).toPrecision(10)));
  const figure =
    value.kind === "word"
      ? value.word
      : value.kind === "between"
        ? `${number(value.low)}..${number(value.high)}`
        : number(value.value);
  return [part, label, at, quantity, figure, unit].filter((one) => one !== undefined).join(" ");
};
