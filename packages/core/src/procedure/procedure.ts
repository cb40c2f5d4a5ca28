// How to make a test on this engine: the lines that fit it, on one screen.

import { knownChamber } from "../cranking/index.ts";
import type { Volume } from "../quantity/index.ts";
import type { Engine } from "../record/index.ts";
import { dry } from "./dry.ts";
import { firstStroke } from "./first-stroke.ts";
import { insteadOfAir, insteadOfOil } from "./instead.ts";
import { leakDown } from "./leak-down.ts";
import { type Line, type Sheet, type Situation } from "./line.ts";
import { oilFor, whyNoOil } from "./oil.ts";
import { teardown } from "./teardown.ts";
import { wet } from "./wet.ts";

/** The tests and works that a procedure can be asked for. */
export type ProcedureKind = "dry" | "wet" | "first-stroke" | "leak-down" | "teardown";

const sheets: Readonly<Record<ProcedureKind, Sheet>> = {
  dry,
  wet,
  "first-stroke": firstStroke,
  "leak-down": leakDown,
  teardown,
};

/** The kinds in the order an owner meets them. */
export const procedureKinds: readonly ProcedureKind[] = [
  "dry",
  "wet",
  "first-stroke",
  "leak-down",
  "teardown",
];

/** A printed line and who says so. */
export interface SourcedLine {
  readonly text: string;
  readonly source: string;
}

/** Title and parts as plain lines of at most 72 characters, at most 19 lines in all without the title. */
export interface Procedure {
  readonly title: string;
  /** What must be so before it begins. */
  readonly before: readonly string[];
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
  /** What makes the reading worthless, or what it cannot show. */
  readonly voids: readonly string[];
  /** Why this test is not for this engine; `steps` then say what to do instead. */
  readonly refused?: string;
  /** Every line above in the order printed, with its source. */
  readonly sources: readonly SourcedLine[];
}

const parts = ["before", "steps", "cautions", "voids"] as const;

/** How to make a test of `kind` on `engine`.
 *  @param known - the chamber volume with the piston at the top [m3], where a burette gave it; else from the geometry */
export const procedureFor = (
  kind: ProcedureKind,
  engine: Engine,
  known: { readonly chamber?: Volume } = {},
): Procedure => {
  const chamber = known.chamber ?? knownChamber(engine.geometry);
  const situation: Situation = {
    engine,
    ...(chamber === undefined ? {} : { chamber }),
    oil: oilFor(engine, chamber),
  };
  const refused =
    kind === "wet" ? whyNoOil(situation) : kind === "leak-down" ? whyNoAir(situation) : undefined;
  const sheet = refused === undefined ? sheets[kind] : kind === "wet" ? insteadOfOil : insteadOfAir;
  const chosen = parts.map((part) => sheet[part].flatMap((line) => printed(line, situation)));
  const [before = [], steps = [], cautions = [], voids = []] = chosen.map((lines) =>
    lines.map(({ text }) => text),
  );
  return {
    title: titleOf(sheet, engine),
    before,
    steps,
    cautions,
    voids,
    ...(refused === undefined ? {} : { refused }),
    sources: chosen.flat(),
  };
};

/** Why no air is blown into this engine, or undefined where it may: its record forbids it. */
const whyNoAir = ({ engine: { leakDownTest } }: Situation): string | undefined =>
  leakDownTest?.allowed === false
    ? `Air under pressure is ruled out for this engine (${leakDownTest.source ?? "engine.json"}).`
    : undefined;

const titleOf = ({ name }: Sheet, { id, cylinders, ignition }: Engine): string => {
  const count = cylinders.length === 1 ? "1 cylinder" : `${String(cylinders.length)} cylinders`;
  const kind = { spark: "spark", compression: "diesel", unknown: "spark or diesel not known" }[ignition];
  return `${name}: ${id} (${count}, ${kind})`;
};

const ignitionOf = { spark: "spark", diesel: "compression" } as const;

/** The line as printed for this engine, or nothing. */
const printed = (line: Line, situation: Situation): SourcedLine[] => {
  const { ignition } = situation.engine;
  if (line.when?.(situation) === false) return [];
  const text = typeof line.text === "string" ? line.text : line.text(situation);
  if (line.only === undefined) return [{ text, source: line.source }];
  if (ignition === "unknown")
    return [
      { text: `If ${line.only}: ${text.charAt(0).toLowerCase()}${text.slice(1)}`, source: line.source },
    ];
  return ignition === ignitionOf[line.only] ? [{ text, source: line.source }] : [];
};
