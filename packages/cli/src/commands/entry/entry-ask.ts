// `enter` on a terminal: what is missing is asked, a line each, cylinder by cylinder. `b` goes back one, `q` leaves.

import {
  type Dialect,
  type Engine,
  type Gauge,
  conditionCell,
  conditionKinds,
  gaugeUnits,
  nearest,
  readNumber,
  splitReadings,
} from "@sealtrend/core";
import { type Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { clean } from "../../render/clean.ts";
import { usageFault } from "../usage.ts";

interface Known {
  readonly engine: Engine;
  readonly gauges: readonly Gauge[];
  readonly dialect: Dialect;
}

interface Questioned {
  /** New names of gauges that were asked about once. */
  readonly questioned: Set<string>;
}

type Answers = ReadonlyMap<string, string>;

interface Question {
  /** Option that the answer stands for, or the label of a cylinder after `c `. */
  readonly key: string;
  readonly text: string;
  /** What is wrong with an answer, or undefined. */
  readonly wrong: (answer: string) => string | undefined;
}

/** The command line with the answers added to it. @throws Stop 2 when the person leaves */
export const askReadings = async (args: Args, io: Io, known: Known): Promise<Args> => {
  const { engine } = known;
  const cylinders = `${String(engine.cylinders.length)} cylinder${engine.cylinders.length === 1 ? "" : "s"}`;
  io.out(
    `${engine.id}: dry compression, ${cylinders}. x = not taken, b = back one, q = leave without saving.\n`,
  );
  const questioned = new Set<string>();
  const answers = await askAll(io, (given) => questions(args, given, { ...known, questioned }), engine);
  const dry = engine.cylinders.map((label) => answers.get(`c ${label}`) ?? "x").join(" ");
  return {
    ...args,
    text: (name) => args.text(name) ?? (answers.get(name) === "" ? undefined : answers.get(name)),
    list: (name) => (name === "dry" ? [dry] : args.list(name)),
  };
};

const askAll = async (
  io: Io,
  questionsAfter: (given: Answers) => readonly Question[],
  engine: Engine,
): Promise<Answers> => {
  const answers = new Map<string, string>();
  for (let at = 0; ;) {
    const question = questionsAfter(answers)[at];
    if (question === undefined) return answers;
    const answer = (await io.ask(question.text))?.trim();
    if (answer === undefined || answer === "q") throw left(engine, answers);
    if (answer === "b") {
      at = Math.max(0, at - 1);
      continue;
    }
    const fault = question.wrong(answer);
    if (fault !== undefined) {
      io.out(`  ${fault}\n`);
      continue;
    }
    answers.set(question.key, answer);
    if (question.key.startsWith("c ")) io.out(soFar(engine, answers));
    at += 1;
  }
};

const left = (engine: Engine, answers: Answers): Stop => {
  const fault = usageFault(
    "left",
    "nothing was saved",
    "all answers",
    "run the command again when you have them",
  );
  const cells = engine.cylinders.flatMap((label) => answers.get(`c ${label}`) ?? []);
  return new Stop(2, [fault], cells.length === 0 ? "" : `typed so far: ${cells.join(" ")}\n`);
};

const questions = (args: Args, given: Answers, known: Known & Questioned): readonly Question[] => {
  const { engine, gauges, questioned } = known;
  const open = (name: string): boolean => args.text(name) === undefined;
  const named = args.text("gauge") ?? given.get("gauge");
  const unitKnown = !open("unit") || gauges.some(({ id, unit }) => id === named && unit !== undefined);
  return [
    ...(open("gauge") ? [gaugeQuestion(gauges, questioned)] : []),
    ...(unitKnown ? [] : [unitQuestion]),
    ...engine.cylinders.map(cylinderQuestion),
    ...conditionQuestions(known).filter(({ key }) => open(key)),
  ];
};

/** A name near a known one is questioned once; typed again, it is taken. */
const gaugeQuestion = (gauges: readonly Gauge[], questioned: Set<string>): Question => {
  const names = gauges.filter(({ kind }) => kind === "compression").map(({ id }) => id);
  return {
    key: "gauge",
    text: `gauge (${names.length === 0 ? "a name for it" : clean(names.join(", "))}; Enter = not recorded): `,
    wrong: (answer) => {
      const [near] = nearest(answer, names);
      if (answer === "" || names.includes(answer) || near === undefined || questioned.has(answer))
        return undefined;
      questioned.add(answer);
      return `no gauge is named ${answer}: did you mean ${near}? Type ${answer} again if it is a new one`;
    },
  };
};

const unitQuestion: Question = {
  key: "unit",
  text: `unit (${gaugeUnits.join(", ")}): `,
  wrong: (answer) =>
    gaugeUnits.some((unit) => unit === answer) ? undefined : `one of ${gaugeUnits.join(", ")}`,
};

const cylinderQuestion = (label: string): Question => ({
  key: `c ${label}`,
  text: `cylinder ${label}: `,
  wrong: (answer) => {
    const one = splitReadings(answer, 1);
    if (one.ok) return undefined;
    const mend = /^write [\d.]+;/.exec(one.mend)?.[0].replace(";", ", if that is meant; ") ?? "";
    return `${mend}a number such as 131, >300 if the needle was pegged, x if it was not taken`;
  },
});

const conditionQuestions = ({ engine, dialect }: Known): readonly Question[] => {
  const wanted: readonly (readonly [string, string])[] = [
    ["engine-temp", "engine: warm, part-warm or cold"],
    ["strokes", "compression strokes each"],
    ["speed", "cranking speed, such as 230rpm"],
    ...(engine.homeAltitude === undefined ? ([["altitude", "altitude, such as 350m"]] as const) : []),
    ...(engine.ignition === "spark" ? ([["throttle", "throttle: open or closed"]] as const) : []),
  ];
  const conditions = wanted
    .filter(([option]) => conditionCell(option, conditionKinds[option]?.example ?? "", dialect.columns).ok)
    .map(([option, text]): Question => ({
      key: option,
      text: `${text} (Enter = not recorded): `,
      wrong: (answer) => {
        const cell = answer === "" ? undefined : conditionCell(option, answer, dialect.columns);
        return cell === undefined || cell.ok ? undefined : `expected ${cell.expected}`;
      },
    }));
  const meter: Question = {
    key: "meter",
    text: `meter${engine.meter === undefined ? "" : ` in ${engine.meter}`} (Enter = not recorded): `,
    wrong: (answer) => (answer === "" || readNumber(answer).ok ? undefined : "a number such as 1412"),
  };
  return [...conditions, meter];
};

/** What was understood, and the spread as it grows. */
const soFar = ({ cylinders }: Engine, answers: Answers): string => {
  const cells = cylinders.flatMap((label) => {
    const cell = answers.get(`c ${label}`);
    return cell === undefined ? [] : [{ label, cell }];
  });
  const numbers = cells.flatMap(({ cell }) => {
    const reading = readNumber(cell.replace(/\?$/, ""));
    return reading.ok && reading.value > 0 ? [reading.value] : [];
  });
  const share = Math.min(...numbers) / Math.max(...numbers);
  const ratio = numbers.length > 1 ? `   lowest/highest ${share.toFixed(2)}` : "";
  return `  ${cells.map(({ label, cell }) => `${label}:${cell}`).join(" ")}${ratio}\n`;
};
