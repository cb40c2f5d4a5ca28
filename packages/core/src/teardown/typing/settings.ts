// Lines that set what holds for those behind them: a unit, the size of a setting, the instrument, the state, who and when.

import { type Problem, problem } from "../../problem/index.ts";
import { datesMeant, isFormula, isIsoDate, partStates } from "../../record/index.ts";
import { inDecimals } from "./decimal.ts";
import { distanceIn, distanceText } from "./distance.ts";
import { figureProblem } from "./figure-problem.ts";
import { isKnownInstrument, knownInstruments, storedInstrument } from "./instruments.ts";
import { type Figure, readFigures } from "./typed-figure.ts";
import { type Piece, type TypedText } from "./typed-text.ts";
import type { TypedLength, TypingContext } from "./typing.ts";
import { isOf, isTypedLength, nameOfUnit, typedUnit, unitNames } from "./units.ts";

export type Setting =
  | { readonly ok: true; readonly text: string; readonly context: TypingContext }
  | { readonly ok: false; readonly problem: Problem };

interface Asked {
  /** Behind the first word. */
  readonly rest: Piece;
  readonly context: TypingContext;
  readonly line: TypedText;
}

const refused = (one: Problem): Setting => ({ ok: false, problem: one });
const holds = (text: string, context: TypingContext): Setting => ({ ok: true, text, context });
const isOff = ({ text }: Piece): boolean => text.toLowerCase() === "off";

/** By the first word of a line. */
const settings: Readonly<Record<string, (asked: Asked) => Setting>> = {
  unit: (asked) => unitSetting(asked.rest, asked),
  set: (asked) => sizeSetting(asked),
  with: (asked) => instrumentSetting(asked),
  state: ({ rest, context, line }) => {
    const text = rest.text.toLowerCase().replace(/\s+/g, " ");
    const state = partStates.find((known) => known === text);
    if (state !== undefined) return holds(`state ${state}`, { ...context, state });
    return refused(
      problem("word-unknown", { column: "state", text, words: partStates }, placeOf({ rest, line })),
    );
  },
  by: (asked) => {
    const { rest, line } = asked;
    const { by: _, ...nobody } = asked.context;
    if (isOff(rest)) return holds("measured by nobody named", nobody);
    if (rest.text === "") return bad("by", asked, "the name of who measures", "by Ann");
    if (isFormula(rest.text)) return refused(problem("text-formula", { column: "by" }, line.placeOf(rest)));
    return holds(`measured by ${rest.text}`, { ...nobody, by: rest.text });
  },
  teardown: (asked) => {
    const number = /^[1-9]\d?$/.test(asked.rest.text) ? Number(asked.rest.text) : undefined;
    if (number === undefined)
      return bad(
        "teardown",
        asked,
        "1 for the first time the engine was apart, 2 for the next",
        "teardown 1",
      );
    return holds(`teardown ${String(number)}`, { ...asked.context, teardown: number });
  },
  date: ({ rest: { text, from }, context, line }) => {
    if (isIsoDate(text)) return holds(`date ${text}`, { ...context, date: text });
    const place = placeOf({ rest: { text, from }, line });
    return refused(
      text === ""
        ? problem("date-missing", { column: "date" }, place)
        : problem("date-bad", { text, ways: datesMeant(text) }, place),
    );
  },
  at: (asked) => {
    const { step: _, ...without } = asked.context;
    if (isOff(asked.rest)) return holds("no step along the straightedge", without);
    const step = distanceIn(asked.rest.text, asked.context);
    if (step === undefined || step <= 0)
      return bad("at", asked, "the distance from one place to the next along the straightedge", "at 75mm");
    return holds(`along the straightedge every ${distanceText(step)} mm`, { ...without, step });
  },
};

/** What a line that sets something may begin with, besides a unit. */
export const settingWords: readonly string[] = Object.keys(settings);

/** Reads a line as a setting; undefined where its first word is none. */
export const readSetting = (line: TypedText, context: TypingContext): Setting | undefined => {
  const { head, tail } = line;
  const [, first = ""] = /^(\S+)/.exec(head.text) ?? [];
  const behind = head.text.slice(first.length);
  const rest = tail ?? {
    text: behind.trim(),
    from: head.from + head.text.length - behind.trimStart().length,
  };
  if (tail !== undefined && behind !== "") return undefined;
  const asked = { rest, context, line };
  const name = first.toLowerCase() === "instrument" ? "with" : first.toLowerCase();
  const setting = Object.hasOwn(settings, name) ? settings[name] : undefined;
  const unit = typedUnit(first);
  if (setting === undefined && unit === undefined) return undefined;
  if (line.note !== undefined) {
    const expected = "a note only behind figures or words of a part";
    return bad(first, { ...asked, rest: line.note }, expected, first);
  }
  if (setting !== undefined) return setting(asked);
  return rest.text === "" ? unitSetting(head, asked) : undefined;
};

const placeOf = ({ rest, line }: Pick<Asked, "rest" | "line">) =>
  line.placeOf(rest.text === "" ? line.head : rest);

const bad = (setting: string, asked: Asked, expected: string, example: string): Setting =>
  refused(problem("typed-setting", { setting, text: asked.rest.text, expected, example }, placeOf(asked)));

const unitSetting = (piece: Piece, { context, line }: Asked): Setting => {
  const unit = typedUnit(piece.text);
  const text =
    unit === undefined ? "" : `figures without a unit are in ${unit === "in" ? "inches" : nameOfUnit(unit)}`;
  if (unit !== undefined && isTypedLength(unit)) return holds(text, { ...context, length: unit });
  if (unit !== undefined && isOf(unit, "volume")) return holds(text, { ...context, volume: unit });
  if (unit !== undefined) return holds(text, { ...context, force: unit });
  const units = Object.values(unitNames).flat();
  return refused(problem("unit-unknown", { text: piece.text, units }, placeOf({ rest: piece, line })));
};

/** A size in the unit it was typed in, with a decimal point. */
const lengthOf = ({ written, unit }: Figure): TypedLength | undefined =>
  isTypedLength(unit) ? { text: inDecimals(written), unit } : undefined;

type OneLength =
  | { readonly ok: true; readonly length: TypedLength; readonly metres: number }
  | { readonly ok: false; readonly problem?: Problem };

const oneLength = (what: string, piece: Piece, { context, line }: Asked): OneLength => {
  const unit = context.length === undefined ? {} : { unit: context.length };
  const read = readFigures(piece.text.replace(/\s+/g, ""), { kind: "length", most: 2, ...unit });
  if (!read.ok) {
    const said = { text: read.text, kind: "length" as const, what, line: line.head.text };
    return { ok: false, problem: figureProblem(read.fault, { ...said, place: line.placeOf(piece) }) };
  }
  const [only] = read.value;
  const length = only === undefined || read.value.length > 1 ? undefined : lengthOf(only);
  if (length === undefined || only?.value.kind !== "length") return { ok: false };
  return { ok: true, length, metres: only.value.value };
};

const sizeSetting = (asked: Asked): Setting => {
  const { set: _, ...without } = asked.context;
  if (isOff(asked.rest)) return holds("figures are whole sizes again", without);
  const read = asked.rest.text === "" ? undefined : oneLength("the size set", asked.rest, asked);
  if (read?.ok === false && read.problem !== undefined) return refused(read.problem);
  if (!read?.ok) return bad("set", asked, "the size that the instrument was set to, or off", "set 86.50mm");
  const { text, unit } = read.length;
  return holds(`figures with a sign count from ${text} ${nameOfUnit(unit)}`, {
    ...without,
    set: read.length,
  });
};

/** What an instrument is read to: a tenth of a micrometre to five millimetres. [m] */
const steps = { least: 1e-7, most: 0.005 };

const instrumentSetting = (asked: Asked): Setting => {
  const { rest, line } = asked;
  const { instrument: _, resolution: __, ...without } = asked.context;
  if (isOff(rest)) return holds("no instrument named", without);
  const [, name = "", figure = ""] =
    /^(["“].*["”]|.*?)\s*([-+]?(?:[\d.,]+|\d+\/\d+)\s*[a-z"µμ]*)?$/i.exec(rest.text) ?? [];
  const [, own] = /^["“](.*)["”]$/.exec(name) ?? [];
  const instrument = storedInstrument(own ?? name);
  if (instrument === "")
    return bad("with", asked, "the instrument, and what it is read to", "with bore gauge 0.01mm");
  if (isFormula(instrument)) return refused(problem("text-formula", { column: "with" }, line.placeOf(rest)));
  if (own === undefined && !isKnownInstrument(instrument)) {
    const words = [...knownInstruments, '"a name of your own"'];
    const facts = { column: "instrument", text: name, words };
    return refused(problem("word-unknown", facts, line.placeOf({ text: name, from: rest.from })));
  }
  if (figure === "") return holds(`measured with ${instrument}`, { ...without, instrument });
  const piece = { text: figure, from: rest.from + rest.text.length - figure.length };
  const read: OneLength = /^[-+]/.test(figure) ? { ok: false } : oneLength("the resolution", piece, asked);
  if (!read.ok && read.problem !== undefined) return refused(read.problem);
  if (!read.ok || read.metres < steps.least || read.metres > steps.most)
    return bad(
      "with",
      { ...asked, rest: piece },
      "what the instrument is read to, at most 5 mm",
      "with micrometer 0.0001in",
    );
  const { text, unit } = read.length;
  const said = `measured with ${instrument}, read to ${text} ${nameOfUnit(unit)}`;
  return holds(said, { ...without, instrument, resolution: read.length });
};
