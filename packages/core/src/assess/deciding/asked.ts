// What was noted in a word that tells too little: what to look for, and what it would settle.

import type { EvidenceLine } from "../../decision/index.ts";
import { type NoteKind, figureOf, newestOf } from "./current-notes.ts";
import type { Deciding } from "./deciding.ts";

export interface Asked {
  readonly line: EvidenceLine;
  readonly text: string;
  readonly command: string;
  readonly why?: string;
  readonly settles: string;
}

interface Ask {
  readonly line: EvidenceLine;
  readonly what: NoteKind;
  readonly words: readonly string[];
  /** Whether naming a cylinder answers it. */
  readonly answer: "another word" | "a cylinder";
  readonly text: string;
  readonly settles: string;
  /** After the name of the engine. */
  readonly note: (label: string) => string;
}

/** Common practice, no source; what metal stands for which part: handbook/decision.md 2, F1 to F3. */
const asks: readonly Ask[] = [
  {
    line: "oil pressure",
    what: "oil pressure hot",
    words: ["low", "none"],
    answer: "another word",
    text: "hot oil pressure on a proved gauge, with the right oil",
    settles:
      "below the maker's minimum on a second gauge it speaks for bearings, though pump and relief valve do it too; inside, it was the gauge or the oil",
    note: () => '--what "oil pressure hot" --value "proved low"',
  },
  {
    line: "debris",
    what: "filter debris",
    words: ["some", "heavy"],
    answer: "another word",
    text: "what metal the filter holds",
    settles:
      "cut it open, with a magnet: bright flakes that it leaves are bearing metal (crank or bearings), what it picks up is iron (rings, bores), chunks stop the engine",
    note: () => '--what "filter debris" --value "bearing metal"',
  },
  {
    line: "noise",
    what: "knock",
    words: ["heavy"],
    answer: "a cylinder",
    text: "which cylinder the knock goes with",
    settles:
      "one that changes when its cylinder is cut out speaks for that rod's bearing; until then do not load it",
    note: (label) => `--what knock --value heavy --cylinders ${label}`,
  },
];

/** In the order of the lines of evidence; nothing where the newest note says enough. */
export const askedOf = (deciding: Deciding): readonly Asked[] =>
  asks.flatMap(({ line, what, words, answer, text, settles, note }): Asked[] => {
    const newest = newestOf(deciding, what);
    const { id, cylinders } = deciding.record.engine;
    const told = newest?.value;
    if (newest === undefined || told === undefined || figureOf(newest) !== undefined) return [];
    if (!words.includes(told) || (answer === "a cylinder" && newest.cylinders.length > 0)) return [];
    return [
      {
        line,
        text,
        command: `sealtrend note ${id} ${note(cylinders[0] ?? "1")}`,
        why: `${what} was noted ${told} (${newest.date}), which does not say where it comes from`,
        settles,
      },
    ];
  });
