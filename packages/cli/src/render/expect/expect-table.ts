// What an expected pressure rests on, in a table: what matters most stands first, what matters little in one line.

import type { ExpectedInput, ExpectedPressure } from "@sealtrend/core";
import type { Known } from "../../commands/expect-steps/expect-known.ts";
import { prose } from "../prose.ts";
import { grid, wrapText } from "../table.ts";
import { displayWidth } from "../width.ts";
import { count, percent } from "../words.ts";
import { inputDoubt, inputName, inputSource, inputValue } from "./expect-inputs.ts";
import type { Telling } from "./expect-units.ts";

/** Inputs that move the reading by less than this are folded into one line. */
export const worthALine = 0.01;

/** @param inputs - in the order to show */
export const inputTable = (
  inputs: readonly ExpectedInput[],
  { modelUncertainty }: ExpectedPressure,
  known: Known,
  { detail, system, width, letters }: Telling,
): readonly string[] => {
  const least = detail === "why" ? 0 : worthALine;
  const shown = inputs.filter(
    ({ name, effect, from }) =>
      name === "speed" || (Math.abs(effect) >= least && (effect !== 0 || from === "assumed")),
  );
  const folded = inputs.filter((input) => !shown.includes(input) && input.effect !== 0);
  const named = (input: ExpectedInput): string => `${inputName(input)} ${inputValue(input, known, system)}`;
  const moves = (effect: number): string => moved(effect, detail);
  const rows = [
    ...shown.map((input) => [
      named(input),
      inputSource(input, known),
      inputDoubt(input, known, system),
      input.effect === 0 ? "" : moves(input.effect),
    ]),
    ...(folded.length === 0
      ? []
      : [[smaller(folded), "", "", moves(Math.hypot(...folded.map(({ effect }) => effect)))]]),
    ["the method itself", "", "", moves(modelUncertainty)],
  ];
  const exact = inputs.filter(({ from, effect }) => from === "given" && effect === 0);
  return [
    ...inColumns(
      rows.map((row) => row.map(letters)),
      width,
    ),
    ...(exact.length === 0 ? [] : prose(letters(`taken as given: ${exact.map(named).join(", ")}`), width)),
  ];
};

/** Beyond a half, a share of the reading says no more than that. */
const moved = (effect: number, detail: Telling["detail"]): string =>
  Math.abs(effect) > 0.5 ? "over 50 %" : percent(Math.abs(effect), detail === "why" ? 1 : 0);

const smaller = (inputs: readonly ExpectedInput[]): string =>
  inputs.length > 2 ? `${count(inputs.length)} smaller ones` : inputs.map(inputName).join(", ");

const head = ["", "", "if off by", "reading moves"];
const align = ["left", "left", "left", "right"] as const;
const gap = 2;
const leastName = 18;

/** The first column is broken into lines where the table would be too wide. */
const inColumns = (rows: readonly (readonly string[])[], width: number): readonly string[] => {
  const widths = [1, 2, 3].map((at) =>
    Math.max(...[head, ...rows].map((row) => displayWidth(row[at] ?? ""))),
  );
  const room = width - widths.reduce((sum, one) => sum + one + gap, 0);
  if (room < leastName) return grid(rows, align, { head, width });
  const broken = rows.flatMap(([name = "", ...cells]) =>
    wrapText(name, room).map((line, i) => (i === 0 ? [line, ...cells] : [`  ${line}`, "", "", ""])),
  );
  return grid(broken, align, { head, width });
};
