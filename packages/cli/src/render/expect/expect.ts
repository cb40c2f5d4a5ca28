// The screen of `expect`: the reading and its band first, then what it rests on, what matters most first; no verdict.

import type {
  EngineRecord,
  ExpectedInput,
  ExpectedPressure,
  GaugePressure,
  PressureUnit,
} from "@sealtrend/core";
import { fromSi } from "@sealtrend/core";
import type { Known } from "../../commands/expect-steps/expect-known.ts";
import { type Expected, expectCautions } from "./expect-cautions.ts";
import { expectWhy } from "./expect-why.ts";
import { inputDoubt, inputName, inputValue, inputWords, kindWords } from "./expect-inputs.ts";
import { prose } from "../prose.ts";
import { grid } from "../table.ts";
import { count, joined, percent, sentence } from "../words.ts";

export interface ExpectOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  /** `why` shows every input and what the model did. */
  readonly detail: "short" | "why";
}

/** Inputs that move the reading by less than this are folded into one line. */
const worthALine = 0.01;

export const expectScreen = (
  expected: Expected,
  { unit, width, detail }: ExpectOptions,
): readonly string[] => {
  const { answer, record } = expected;
  const inputs = [...answer.inputs].sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
  const long = detail === "why";
  const parts = [
    [
      ...prose(headline(answer, unit), width),
      ...prose(circumstances(expected), width),
      ...makersFigure(record, unit).flatMap((text) => prose(text, width)),
    ],
    inputTable(inputs, answer, detail, width),
    long ? expectWhy(answer, width) : [],
    [
      ...expectCautions(expected).flatMap((text) => prose(text, width)),
      ...(long ? [] : narrower(inputs).flatMap((text) => prose(text, width))),
    ],
  ];
  return parts.filter((lines) => lines.length > 0).flatMap((lines, i) => (i === 0 ? lines : ["", ...lines]));
};

const headline = (answer: ExpectedPressure, unit: PressureUnit): string => {
  const { expected, low, high } = answer;
  const step = roundTo(fromSi(expected, unit));
  const shown = (pressure: GaugePressure): string => rounded(fromSi(pressure, unit), step);
  return `About ${shown(expected)} ${unit}, likely ${shown(low)} to ${shown(high)} ${unit} (19 chances in 20), if it is healthy.`;
};

/** 1, 2 or 5 of a decade, at most 3 % of the value: finer would be false. */
const roundTo = (value: number): number => {
  const most = Math.max(value * 0.03, 1e-6);
  const decade = 10 ** Math.floor(Math.log10(most));
  return decade * ([5, 2].find((part) => part * decade <= most) ?? 1);
};

const rounded = (value: number, step: number): string =>
  (Math.round(value / step) * step).toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));

/** `Spark engine, engine warm, at sea level …`. */
const circumstances = ({ answer, known, record }: Expected): string => {
  const { kind, kindFrom } = known;
  const named = record === undefined ? "" : `${record.engine.name}: `;
  const guessed = kindFrom === undefined ? " (by its ratio; --ignition settles it)" : "";
  const wall = known.cylinder.engine === "cold" ? "engine as cold as the air" : "engine warm";
  const heat = answer.model.heat === "none" ? ", no heat lost" : "";
  return sentence(
    `${named}${kindWords[kind]}${guessed}, ${wall}, ${placeOf(known)}${heat}, read when the needle stops.`,
  );
};

const placeOf = ({ air, altitude }: Known): string => {
  const pressure = `${fromSi(air.station, "kPa").toFixed(1)} kPa of air`;
  switch (air.from) {
    case "assumed":
      return "at sea level (no height given: 1.2 % less for each 100 m up)";
    case "altitude":
      return `at ${String(Math.round(altitude ?? 0))} m (${pressure})`;
    case "qnh":
      return `with ${pressure} (weather report)`;
    case "station":
      return `with ${pressure} (barometer)`;
  }
};

/** What the maker printed stands beside the band, unjudged. */
const makersFigure = (record: EngineRecord | undefined, unit: PressureUnit): readonly string[] => {
  const limits = record?.engine.compressionLimits;
  if (limits?.new === undefined) return [];
  const source = limits.source === undefined ? "" : ` (${limits.source})`;
  const value = Number(fromSi(limits.new, unit).toPrecision(3));
  return [`The maker's figure for a new engine: ${String(value)} ${unit}${source}.`];
};

const inputTable = (
  inputs: readonly ExpectedInput[],
  { modelUncertainty }: ExpectedPressure,
  detail: ExpectOptions["detail"],
  width: number,
): readonly string[] => {
  const least = detail === "why" ? 0 : worthALine;
  const places = detail === "why" ? 1 : 0;
  const shown = inputs.filter(
    ({ effect, from }) => Math.abs(effect) >= least && (effect !== 0 || from === "assumed"),
  );
  const folded = inputs.filter((input) => !shown.includes(input) && input.effect !== 0);
  const rest = Math.hypot(...folded.map(({ effect }) => effect));
  const rows = shown.map((input) => [
    `${inputName(input)} ${inputValue(input)}`,
    input.from,
    inputDoubt(input),
    input.effect === 0 ? "" : percent(Math.abs(input.effect), places),
  ]);
  const table = grid(
    [
      ...rows,
      ...(folded.length === 0 ? [] : [[smaller(folded), "", "", percent(rest, places)]]),
      ["the method itself", "", "", percent(modelUncertainty, places)],
    ],
    ["left", "left", "left", "right"],
    { head: ["", "", "if off by", "reading moves"], width },
  );
  const exact = inputs.filter(({ from, effect }) => from === "given" && effect === 0);
  const asGiven = exact.map((input) => `${inputName(input)} ${inputValue(input)}`).join(", ");
  return [...table, ...(exact.length === 0 ? [] : prose(`taken as given: ${asGiven}`, width))];
};

const smaller = (inputs: readonly ExpectedInput[]): string =>
  inputs.length > 2 ? `${count(inputs.length)} smaller ones` : inputs.map(inputName).join(", ");

/** The options that would narrow the band most, for what a person can find out. */
const narrower = (inputs: readonly ExpectedInput[]): readonly string[] => {
  const strokeKnown = inputs.some(({ name }) => name === "stroke");
  const options = inputs.flatMap(({ name, from, effect }) => {
    const option = name === "shape" && strokeKnown ? "bore" : inputWords[name].option;
    return from === "assumed" && option !== undefined && Math.abs(effect) >= worthALine ? [option] : [];
  });
  if (options.length === 0) return [];
  return [`A narrower band: ${joined(options.slice(0, 3).map((option) => `--${option}`))}.`];
};
