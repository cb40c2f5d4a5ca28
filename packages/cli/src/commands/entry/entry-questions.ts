// The questions of `enter`: which gauge, which unit, each cylinder, the conditions. Each says what it takes and what is wrong.

import {
  type Dialect,
  type Engine,
  type Gauge,
  type Test,
  conditionCell,
  conditionKinds,
  gaugeUnits,
  nearest,
  readNumber,
  splitReadings,
} from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { clean } from "../../render/clean.ts";
import { inMeter } from "../dated-row.ts";
import { type Typed, cellFault } from "./cell-fault.ts";
import { type Asked, slipAmong } from "./asked-slips.ts";
import type { Target } from "./entry-target.ts";
import { gaugeOfTest } from "./test-gauge.ts";

export interface Known {
  readonly engine: Engine;
  readonly gauges: readonly Gauge[];
  readonly dialect: Dialect;
  /** Tests of the engine, by date. */
  readonly earlier: readonly Test[];
  readonly target: Target;
}

export type Answers = ReadonlyMap<string, string>;

/** Answers that were questioned once: typed again, they are taken. */
export type Doubted = Set<string>;

export type Taken =
  | { readonly kind: "taken"; readonly answers: readonly (readonly [string, string])[] }
  /** `doubted`: typed again, it is taken. The text is one sentence. */
  | { readonly kind: "refused" | "doubted"; readonly text: string };

export interface Question {
  /** Option that the answer stands for, or the label of a cylinder after `c `. */
  readonly key: string;
  readonly text: string;
  /** What there is to choose from, in brackets behind it. */
  readonly choices?: string;
  /** One line. */
  readonly help: string;
  /** Whether Enter alone is an answer. */
  readonly mayBeOpen: boolean;
  /** What Enter alone stands for, where that is more than nothing. */
  readonly offers?: string;
  readonly take: (answer: string) => Taken;
}

/** All questions, as the answers so far make them. @param args - what an option says is not asked */
export const questionsFor = (
  args: Args,
  given: Answers,
  known: Known,
  doubted: Doubted,
): readonly Question[] => {
  const { engine, gauges, earlier, target } = known;
  const open = (name: string): boolean => args.text(name) === undefined;
  return [
    ...(open("gauge") ? [gaugeQuestion(gauges, doubted, gaugeOfTest("dry", target, earlier))] : []),
    ...(gaugeOf(args, given, known)?.unit !== undefined || !open("unit") ? [] : [unitQuestion]),
    ...engine.cylinders.map((label, i) =>
      cylinderQuestion(label, engine.cylinders.slice(i), {
        known,
        typed: typedSoFar(args, given, known),
        doubted,
      }),
    ),
    ...conditionQuestions(known).filter(({ key }) => open(key)),
  ];
};

export const keyOf = (label: string): string => `c ${label}`;
export const isCylinder = (key: string): boolean => key.startsWith("c ");

const gaugeOf = (args: Args, given: Answers, { gauges }: Known): Gauge | undefined => {
  const named = args.text("gauge") ?? given.get("gauge");
  return gauges.find(({ id }) => id === named);
};

/** The row of readings as it stands. */
export const typedSoFar = (args: Args, given: Answers, known: Known): Typed => {
  const gauge = gaugeOf(args, given, known);
  const cells = known.engine.cylinders.flatMap((label): (readonly [string, string])[] => {
    const cell = given.get(keyOf(label));
    return cell === undefined ? [] : [[label, cell]];
  });
  const unit = args.text("unit") ?? gauge?.unit ?? given.get("unit");
  return { unit, gauge, cells: new Map(cells) };
};

const one = (key: string, answer: string): Taken => ({ kind: "taken", answers: [[key, answer]] });
const refused = (text: string): Taken => ({ kind: "refused", text });

/** A name near a known one, and a reading that stands in its place, is questioned once; typed again, it is taken.
 *  @param ofTest - the gauge that read the test which is added to */
const gaugeQuestion = (gauges: readonly Gauge[], doubted: Doubted, ofTest: string | undefined): Question => {
  const names = gauges.filter(({ kind }) => kind === "compression").map(({ id }) => id);
  return {
    key: "gauge",
    text: "gauge",
    choices: names.length === 0 ? "a name for it" : clean(names.join(", ")),
    help: "the gauge that was used, by its name in gauges.csv or a new name",
    mayBeOpen: true,
    ...(ofTest === undefined ? {} : { offers: ofTest }),
    take: (answer) => {
      const [near] = nearest(answer, names);
      const isReading = splitReadings(answer, 1).ok;
      const doubt = `gauge ${answer}`;
      if (answer === "" || answer === ofTest || names.includes(answer) || doubted.has(doubt))
        return one("gauge", answer);
      const other = questionOf(answer);
      if (other !== undefined)
        return refused(`${clean(answer)} is ${other}: the gauge first, by its name, or Enter`);
      if (near === undefined && !isReading) return one("gauge", answer);
      doubted.add(doubt);
      const typed = clean(answer);
      const text = isReading
        ? `${typed} looks like a reading: the gauge first, by its name, or Enter; ${typed} again if that is its name`
        : `no gauge is named ${typed}: did you mean ${clean(near ?? "")}? Type ${typed} again if it is a new one`;
      return { kind: "doubted", text };
    },
  };
};

/** What a word answers that is no name of a gauge. */
const questionOf = (answer: string): string | undefined => {
  const word = answer.toLowerCase();
  if ([...gaugeUnits, "%"].some((unit) => unit.toLowerCase() === word)) return "a unit";
  return otherWords.find(({ words }) => words.includes(word))?.answers;
};

const otherWords: readonly { readonly answers: string; readonly words: readonly string[] }[] = [
  {
    answers: "a way to fire",
    words: ["spark", "compression", "diesel", "petrol", "gasoline", "gas", "unknown"],
  },
  { answers: "how warm it was", words: ["warm", "part-warm", "cold", "hot"] },
  { answers: "a place of the throttle", words: ["open", "closed", "half"] },
  { answers: "a kind of reading", words: ["dry", "wet", "leak-down", "first-stroke", "running"] },
];

const unitQuestion: Question = {
  key: "unit",
  text: "unit",
  choices: gaugeUnits.join(", "),
  help: `as the dial of the gauge says: ${gaugeUnits.join(", ")}`,
  mayBeOpen: false,
  take: (answer) => {
    const unit = gaugeUnits.find((name) => name.toLowerCase() === answer.toLowerCase());
    return unit === undefined ? refused(`one of ${gaugeUnits.join(", ")}`) : one("unit", unit);
  },
};

/** @param left - this cylinder and those behind it: readings of all of them are taken at once */
const cylinderQuestion = (
  label: string,
  left: readonly string[],
  asked: Asked & { readonly known: Known },
): Question => ({
  key: keyOf(label),
  text: `cylinder ${clean(label)}`,
  help: `a number such as 131; 131? if doubtful, >300 if pegged, 0 if dead, x if not taken${left.length > 1 ? `; or all ${String(left.length)} that are left` : ""}`,
  mayBeOpen: false,
  take: (typed) => {
    const bare = withoutUnit(typed, asked.typed.unit);
    if (bare.kind === "refused") return bare;
    const answer = bare.text;
    const split = splitReadings(answer, 1);
    const list =
      split.ok || left.length === 1 || !isList(answer) ? split : splitReadings(answer, left.length);
    if (!list.ok) return refused(readingMend(list, left.length));
    const cells = list.cells.map((cell, i): readonly [string, string] => [left[i] ?? label, cell]);
    const faults = cells.map(([at, cell]) => cellFault(at, cell, asked.typed, asked.known));
    const fault = faults.find((found) => found !== undefined);
    if (fault !== undefined) return refused(fault);
    const [cell = "x"] = list.cells;
    const doubt = list.cells.length === 1 ? slipAmong(label, cell, asked) : undefined;
    if (doubt !== undefined) return { kind: "doubted", text: doubt };
    return { kind: "taken", answers: cells.map(([at, text]) => [keyOf(at), text] as const) };
  },
});

/** `131psi`: the unit is known by now, and may stand there again. */
const withoutUnit = (
  answer: string,
  unit: string | undefined,
): { readonly kind: "bare"; readonly text: string } | { readonly kind: "refused"; readonly text: string } => {
  const found = gaugeUnits.find((name) => answer.toLowerCase().endsWith(name.toLowerCase()));
  const number = found === undefined ? "" : answer.slice(0, -found.length).trim();
  if (found === undefined || !/\d\??$/.test(number)) return { kind: "bare", text: answer };
  if (unit === undefined || unit === found) return { kind: "bare", text: number };
  const mend = `readings here are in ${unit}: leave ${found} off, or go back with b to the unit`;
  return { kind: "refused", text: `${clean(answer)}: ${mend}` };
};

/** Several readings, apart by more than one comma: `13,52` is one. */
const isList = (answer: string): boolean => /[\s;/]/.test(answer) || answer.split(",").length > 2;

/** @param left - cylinders that were not read yet */
const readingMend = (
  { found, mend }: { readonly found: string; readonly mend: string },
  left: number,
): string => {
  const count = /^\d+ readings?(?= in )/.exec(found)?.[0];
  if (count === undefined) {
    const write = /^write [\d.]+;/.exec(mend)?.[0].replace(";", ", if that is meant; ") ?? "";
    return `${write}a number such as 131, >300 if the needle was pegged, x if it was not taken`;
  }
  return `${count}, and ${String(left)} ${left === 1 ? "cylinder is" : "cylinders are"} left: one, or ${left === 1 ? "no more" : "all of them"}`;
};

const conditionQuestions = ({ engine, dialect }: Known): readonly Question[] => {
  const wanted: readonly (readonly [string, string])[] = [
    ["engine-temp", "engine: warm, part-warm or cold"],
    ["strokes", "compression strokes each"],
    ["speed", "cranking speed, such as 230rpm"],
    ...(engine.homeAltitude === undefined ? ([["altitude", "altitude, such as 350m"]] as const) : []),
    ...(engine.ignition === "spark" ? ([["throttle", "throttle: open or closed"]] as const) : []),
  ];
  const example = (option: string): string => conditionKinds[option]?.example ?? "";
  const conditions = wanted
    .filter(([option]) => conditionCell(option, example(option), dialect.columns).ok)
    .map(([option, text]): Question => ({
      key: option,
      text,
      help: `such as ${example(option)}`,
      mayBeOpen: true,
      take: (answer) => {
        const cell = answer === "" ? undefined : conditionCell(option, answer, dialect.columns);
        return cell === undefined || cell.ok ? one(option, answer) : refused(`expected ${cell.expected}`);
      },
    }));
  const meter: Question = {
    key: "meter",
    text: `meter${inMeter(engine)}`,
    help: "what the meter of the engine shows, such as 1412",
    mayBeOpen: true,
    take: (answer) =>
      answer === "" || readNumber(answer).ok ? one("meter", answer) : refused("a number such as 1412"),
  };
  return [...conditions, meter];
};
