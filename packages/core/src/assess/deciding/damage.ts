// Damage that no row of the ladder weighs: parts spoilt to the eye, a crack, a knock that nobody has placed. It is settled
// before the engine is closed or anything is ordered.

import { type Spoilt, spoiltParts } from "../../teardown/index.ts";
import type { Asked } from "./asked.ts";
import { figureOf, newestOf } from "./current-notes.ts";
import type { Deciding } from "./deciding.ts";

export interface Damage {
  /** As told to a mechanic, with where it comes from: `pin 2: scored (teardown 1, 2026-05-20)`. */
  readonly found: string;
  /** What to do about it first. */
  readonly first: string;
  /** Whether new rings and bearings, which go in anyway, leave it open. */
  readonly withNewShells: "open" | "renewed";
  /** What to find out, where nothing else asks for it. */
  readonly asked?: Asked;
}

type Told = Pick<Damage, "first" | "withNewShells"> & Pick<Asked, "line" | "text" | "settles">;

/** A scored bore is a row itself. @source handbook/teardown.md 5; decision.md 2 has no row for shells or cracks */
export const damageOf = (deciding: Deciding): readonly Damage[] => {
  const assessment = deciding.measured?.assessment;
  const spoilt = assessment === undefined ? [] : spoiltParts(assessment);
  return [
    ...spoilt
      .filter(({ part }) => part !== "bore")
      .map((one): Damage => {
        const found = `${one.text} (teardown ${String(assessment?.teardown ?? 1)}, ${one.date})`;
        const { first, withNewShells, text, ...asked } = toldOf(one);
        const command = `sealtrend teardown ${deciding.record.engine.id}`;
        return { found, first, withNewShells, asked: { ...asked, text: `${found}: ${text}`, command } };
      }),
    ...unplacedKnock(deciding),
  ];
};

const toldOf = ({ part, label, text }: Spoilt): Told => {
  const named = [part, label].filter(Boolean).join(" ");
  if (part === "crack")
    return {
      line: "sight",
      text: "what can be done about it",
      settles: "nothing else is paid for before that is known",
      first: `have ${text.replace(/^a /, "the ")} judged: replace, or a specialist's repair where the maker allows one`,
      withNewShells: "open",
    };
  if (part === "main" || part === "pin")
    return {
      line: "measured",
      text: "what it measures",
      settles: "a scored or blued journal is ground or exchanged; cracks are looked for before paying",
      first: `measure ${named}, and show the crank to the shop: cracks first, then grind or exchange`,
      withNewShells: "open",
    };
  return {
    line: "measured",
    text: "its clearance, its journal, and what did it",
    settles:
      "past its limit the crank is worked on; inside, new shells once the cause is found: dirt, oil supply, a bent rod or cap",
    first: `measure the clearance of ${named} and its journal, and find what wore the shell`,
    withNewShells: "renewed",
  };
};

/** A heavy knock with no cylinder is no row, and yet no engine to close up. What placing it settles is asked with the notes. */
const unplacedKnock = (deciding: Deciding): readonly Damage[] => {
  const knock = newestOf(deciding, "knock");
  if (knock?.value !== "heavy" || knock.cylinders.length > 0) return [];
  return figureOf(knock) === undefined
    ? [
        {
          found: `heavy knock (note ${knock.date})`,
          first: "find which rod or main bearing knocks: pan off, caps off one by one, shells and journals",
          withNewShells: "open",
        },
      ]
    : [];
};
