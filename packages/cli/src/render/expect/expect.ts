// The screen of `expect`: the reading and its band first, then what it rests on, what matters most first; no verdict.

import type { ExpectedInput, ExpectedPressure, GaugePressure, PressureUnit } from "@sealtrend/core";
import { fromSi, leastOnADial } from "@sealtrend/core/parts";
import { type Expected, expectCautions, unlikelyCautions } from "./expect-cautions.ts";
import { inputWords } from "./expect-inputs.ts";
import { circumstances, makersFigure } from "./expect-place.ts";
import { inputTable, worthALine } from "./expect-table.ts";
import type { Telling } from "./expect-units.ts";
import { expectWhy } from "./expect-why.ts";
import { prose } from "../prose.ts";
import { joined } from "../words.ts";

export const expectScreen = (expected: Expected, options: Telling): readonly string[] => {
  const { answer, known, record } = expected;
  const { unit, width, detail, system, letters } = options;
  const inputs = [...answer.inputs].sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
  const said = (texts: readonly string[]): readonly string[] =>
    texts.flatMap((text) => prose(letters(text), width));
  const parts = [
    said([
      headline(answer, unit),
      ...unlikelyCautions(known),
      circumstances(expected, system),
      ...makersFigure(record, known.air, unit),
    ]),
    inputTable(inputs, answer, known, options),
    detail === "why" ? expectWhy(expected, options) : [],
    said([...expectCautions(expected), ...narrower(inputs, answer)]),
  ];
  return parts.filter((lines) => lines.length > 0).flatMap((lines, i) => (i === 0 ? lines : ["", ...lines]));
};

const headline = (answer: ExpectedPressure, unit: PressureUnit): string => {
  const { expected, low, high, standing } = answer;
  const rough = (pressure: GaugePressure): string => String(Number(fromSi(pressure, unit).toPrecision(1)));
  switch (standing) {
    case "no-pressure":
      return `Next to no pressure builds up with these figures: less than ${rough(leastOnADial)} ${unit}, too little for any compression gauge. Look at what was given.`;
    case "too-wide":
      return `Nothing useful can be said of the reading: a healthy cylinder could show anything from ${rough(low)} to ${rough(high)} ${unit}.`;
    case "usable": {
      const step = roundTo(fromSi(expected, unit));
      const shown = (pressure: GaugePressure): string => rounded(fromSi(pressure, unit), step);
      return `About ${shown(expected)} ${unit}, likely ${shown(low)} to ${shown(high)} ${unit} (19 chances in 20), if it is healthy.`;
    }
  }
};

/** 1, 2 or 5 of a decade, at most 3 % of the value: finer would be false. */
const roundTo = (value: number): number => {
  const most = value * 0.03;
  const decade = 10 ** Math.floor(Math.log10(most));
  return decade * ([5, 2].find((part) => part * decade <= most) ?? 1);
};

const rounded = (value: number, step: number): string =>
  (Math.round(value / step) * step).toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));

/** The options that would narrow the band most, for what a person can find out. */
const narrower = (inputs: readonly ExpectedInput[], { standing }: ExpectedPressure): readonly string[] => {
  const strokeKnown = inputs.some(({ name }) => name === "stroke");
  const options = inputs.flatMap(({ name, from, effect }) => {
    const option = name === "shape" && strokeKnown ? "bore" : inputWords[name].option;
    return from === "assumed" && option !== undefined && Math.abs(effect) >= worthALine ? [option] : [];
  });
  if (options.length === 0 || standing === "no-pressure") return [];
  return [`A narrower band: ${joined(options.slice(0, 3).map((option) => `--${option}`))}.`];
};
