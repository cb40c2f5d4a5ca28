// `enter` on a terminal: what is missing is asked, a line each, cylinder by cylinder. `b` goes back one, `?` helps, `q` leaves; what
// was answered is kept from the first answer on. After a refusal only what is typed then is taken, so that the lines of a paste
// stay with the questions they were meant for.

import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { clean } from "../../render/clean.ts";
import { prose } from "../../render/prose.ts";
import { askPerson } from "../kept/ask-person.ts";
import type { Session } from "../kept/entry-session.ts";
import { leftEarly, leftText } from "../kept/left-early.ts";
import { slipLeft, unitKey } from "./asked-slips.ts";
import { cellsText, soFar } from "./entry-echo.ts";
import {
  type Doubted,
  type Known,
  type Question,
  type Taken,
  isCylinder,
  keyOf,
  questionsFor,
  typedSoFar,
} from "./entry-questions.ts";

export interface Asking extends Known {
  readonly session: Session;
  readonly say: (lines: readonly string[]) => void;
  /** Options that the line which goes on needs, such as --new. */
  readonly words: readonly string[];
}

export interface AskedReadings {
  /** The command line with the answers added to it. */
  readonly args: Args;
  /** Whether the unit of the readings was questioned, and stands. */
  readonly unitStands: boolean;
}

/** @throws Stop 2 when the person leaves */
export const askReadings = async (args: Args, io: Io, asking: Asking): Promise<AskedReadings> => {
  const { engine, say } = asking;
  const { cylinders } = engine;
  const many = `${String(cylinders.length)} cylinder${cylinders.length === 1 ? "" : "s"}`;
  say(prose(`${engine.id}: dry compression, ${many}. ${keys}`, io.width));
  const doubted: Doubted = new Set();
  const answers = await askAll(args, io, { ...asking, doubted });
  const list = questionsFor(args, answers, asking, doubted);
  const asked = new Map(list.map(({ key }) => [key, answers.get(key) ?? ""]));
  const dry = cylinders.map((label) => asked.get(keyOf(label)) ?? "x").join(" ");
  const answered = (name: string): string | undefined => {
    const answer = asked.get(name);
    return answer === "" ? undefined : answer;
  };
  return {
    args: {
      ...args,
      text: (name) => args.text(name) ?? answered(name),
      list: (name) => (name === "dry" ? [dry] : args.list(name)),
    },
    unitStands: asked.has("unit") && doubted.has(unitKey(asked.get("unit") ?? "")),
  };
};

const keys = ["x = not taken", "b = back one", "? = help", "q = leave; what you typed is kept."]
  .map((key) => key.replace(/^(.) = (\S+)/, "$1\u00a0=\u00a0$2"))
  .join(", ");

/** Where the talk stands. */
interface Turn {
  /** Index of the question. */
  readonly at: number;
  /** Its answer was refused or questioned: what answers it is typed now. */
  readonly again?: "refused" | "doubted";
  /** Where to go on behind it, where that is not the next one. */
  readonly then?: number;
}

interface Talk extends Asking {
  readonly doubted: Doubted;
}

const askAll = async (args: Args, io: Io, talk: Talk): Promise<ReadonlyMap<string, string>> => {
  const { session, engine, say } = talk;
  const answers = new Map(session.answers);
  const questions = (): readonly Question[] => questionsFor(args, answers, talk, talk.doubted);
  const echo = (): void => say(soFar(engine, typedSoFar(args, answers, talk), io.width));
  // what was questioned before it was left is questioned again: here it is only looked at
  for (const { key, take } of questionsFor(args, answers, talk, new Set()))
    if (take(answers.get(key) ?? "").kind === "refused") answers.delete(key);
  if ([...answers.keys()].some(isCylinder)) echo();
  let turn: Turn = { at: firstOpen(questions(), answers) };
  for (;;) {
    const list = questions();
    const left = leftDoubt(list, turn.at, { talk, typed: typedSoFar(args, answers, talk) });
    if (left !== undefined) {
      say(prose(left.text, io.width, "  "));
      turn = { at: left.at, again: left.again, then: turn.at };
    }
    const question = list[turn.at];
    if (question === undefined) return answers;
    const former = turn.again === "doubted" ? undefined : answers.get(question.key);
    const gone = { typed: typedText(talk, answers, io.width), isKept: session.isKept(), words: talk.words };
    const answer = await askPerson(io, promptOf(question, former), {
      ifLeft: leftText(placeOf(talk), gone, io.width),
      takes: turn.again === undefined ? "typed ahead" : "typed now",
    });
    if (answer === undefined || answer === "q")
      throw leftEarly(placeOf(talk), { ...gone, expected: "all answers" });
    if (answer === "b") {
      turn = { at: Math.max(0, turn.at - 1) };
      continue;
    }
    const taken = takenFrom(question, answer, former);
    if (taken.kind !== "taken") {
      say(prose(taken.text, io.width, "  "));
      turn = answer === "?" || turn.again === "doubted" ? turn : { ...turn, again: taken.kind };
      continue;
    }
    for (const [key, text] of taken.answers) answers.set(key, text);
    session.keep([...answers]);
    if (isCylinder(question.key)) echo();
    turn = { at: turn.then ?? turn.at + taken.answers.length };
  }
};

/** The first that was not answered; where all were, the last is asked once more before anything is saved. */
const firstOpen = (list: readonly Question[], answers: ReadonlyMap<string, string>): number => {
  const open = list.findIndex(({ key }) => !answers.has(key));
  return open < 0 ? list.length - 1 : open;
};

/** Behind the last cylinder: a doubt about one of them, or about their unit, that was not told yet. */
const leftDoubt = (
  list: readonly Question[],
  at: number,
  { talk, typed }: { readonly talk: Talk; readonly typed: ReturnType<typeof typedSoFar> },
): { readonly at: number; readonly again: "refused" | "doubted"; readonly text: string } | undefined => {
  if (at <= list.findLastIndex(({ key }) => isCylinder(key))) return undefined;
  const doubt = slipLeft({ known: talk, typed, doubted: talk.doubted });
  if (doubt === undefined) return undefined;
  const { label, text } = doubt;
  const found = list.findIndex(({ key }) => key === (label === undefined ? "unit" : keyOf(label)));
  return found < 0 ? undefined : { at: found, again: label === undefined ? "refused" : "doubted", text };
};

/** With the former answer, which Enter keeps. */
const promptOf = (question: Question, former: string | undefined): string => {
  const { text, choices } = question;
  const isOpen = former === undefined || former === "";
  const enter = isOpen ? enterMeans(question) : [];
  const beside = [...(choices === undefined ? [] : [choices]), ...enter];
  return `${text}${beside.length === 0 ? "" : ` (${beside.join("; ")})`}${isOpen ? "" : ` [${clean(former)}]`}: `;
};

const enterMeans = ({ mayBeOpen, offers }: Question): readonly string[] => {
  if (offers !== undefined) return [`Enter\u00a0=\u00a0${clean(offers)}, as in the test`];
  return mayBeOpen ? [enterOpens] : [];
};

const enterOpens = "Enter = not recorded".replaceAll(" ", "\u00a0");

const takenFrom = (question: Question, answer: string, former: string | undefined): Taken => {
  const { help, mayBeOpen, take, offers } = question;
  if (answer === "?") {
    const dash = [
      ...(offers === undefined ? [] : ["-\u00a0=\u00a0not\u00a0recorded"]),
      ...(former === undefined ? [] : ["- takes the answer out"]),
    ].slice(0, 1);
    const opens = [...enterMeans(question), ...dash].join(", ");
    return { kind: "refused", text: opens === "" ? help : `${help}; ${opens}` };
  }
  if (answer === "-" && mayBeOpen) return take("");
  if (answer !== "") return take(answer);
  const kept = former === undefined || former === "" ? (offers ?? former) : former;
  if (kept !== undefined) return take(kept);
  return mayBeOpen ? take("") : { kind: "refused", text: help };
};

const placeOf = ({ engine }: Asking) => ({ command: "enter", engine: engine.id }) as const;

const typedText = ({ engine }: Asking, answers: ReadonlyMap<string, string>, width: number): string => {
  const cells = engine.cylinders.flatMap((label) => answers.get(keyOf(label)) ?? []);
  return cells.length === 0 ? "" : `${prose(`typed so far: ${cells.join(" ")}`, width).join("\n")}\n`;
};

/** How far a kept entry had come. */
export const entryTold = (
  cylinders: readonly string[],
  answers: readonly (readonly [string, string])[],
): string => {
  const [last = ""] = answers.at(-1) ?? [];
  const cells = new Map(answers.flatMap(([key, text]) => (isCylinder(key) ? [[key.slice(2), text]] : [])));
  const readings = cells.size === 0 ? "" : ` (${cellsText(cylinders, cells)})`;
  return `after ${isCylinder(last) ? `cylinder ${clean(last.slice(2))}` : `the question of ${clean(last)}`}${readings}`;
};
