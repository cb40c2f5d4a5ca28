// The lines taken so far, each with what held when it was typed, so that the last can be taken back.

import {
  type Engine,
  type Measurement,
  type Problem,
  type TypedMeasurement,
  type TypingContext,
  readTypedLine,
} from "@sealtrend/core/parts";
import { clean } from "../../render/clean.ts";

export interface TakenLine {
  readonly text: string;
  /** Of the file or of the input, from 1. */
  readonly line: number;
  readonly measurements: readonly TypedMeasurement[];
  /** What held before it. */
  readonly before: TypingContext;
}

export interface Entry {
  readonly context: TypingContext;
  readonly taken: readonly TakenLine[];
}

export type Took =
  | { readonly kind: "measured"; readonly entry: Entry; readonly measurements: readonly TypedMeasurement[] }
  /** `text` says what holds from here on. */
  | { readonly kind: "context"; readonly entry: Entry; readonly text: string }
  | { readonly kind: "blank"; readonly entry: Entry }
  /** The entry stays as it was. */
  | { readonly kind: "fault"; readonly entry: Entry; readonly problems: readonly Problem[] };

export const takeLine = (text: string, entry: Entry, { line, engine, note }: At): Took => {
  const { context, taken } = entry;
  const read = readTypedLine(text, context, engine);
  switch (read.kind) {
    case "blank":
      return { kind: "blank", entry };
    case "fault":
      return { kind: "fault", entry, problems: read.problems };
    case "context":
      return {
        kind: "context",
        text: read.text,
        entry: {
          context: read.context,
          taken: [...taken, { text, line, measurements: [], before: context }],
        },
      };
    case "measurements": {
      const measurements =
        note === undefined ? read.measurements : read.measurements.map((one) => ({ note, ...one }));
      const added = { text, line, measurements, before: context };
      return { kind: "measured", measurements, entry: { context: read.context, taken: [...taken, added] } };
    }
  }
};

interface At {
  readonly line: number;
  readonly engine: Engine;
  /** Of a measurement that has none of its own. */
  readonly note?: string;
}

/** The last line taken back; undefined where there is none. */
export const takeBack = ({ taken }: Entry): { readonly entry: Entry; readonly text: string } | undefined => {
  const last = taken.at(-1);
  if (last === undefined) return undefined;
  return { entry: { context: last.before, taken: taken.slice(0, -1) }, text: last.text };
};

/** All measurements of an entry, in the order they were typed. */
export const typedMeasurements = ({ taken }: Entry): readonly TypedMeasurement[] =>
  taken.flatMap(({ measurements }) => measurements);

/** As if they stood in the file behind those recorded, to judge them before they do. */
export const asRecorded = (
  measurements: readonly TypedMeasurement[],
  recorded: readonly Pick<Measurement, "line">[],
): readonly Measurement[] => {
  const last = recorded.reduce((so, { line }) => Math.max(so, line), 0);
  return measurements.map((measurement, i) => ({ ...measurement, line: last + i + 1 }));
};

/** The lines as they were typed, to be given back. */
export const typedBack = ({ taken }: Entry): string =>
  taken.map(({ text }) => `${clean(text, 10_000)}\n`).join("");
