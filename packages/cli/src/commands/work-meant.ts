// A work that was named in other words than services.csv has: which of them it comes to, so that a new history begins where it has to.

import { nearest, workNames } from "@sealtrend/core/parts";
import { type Args, Stop } from "../command.ts";
import { typedLine } from "../options/quote.ts";
import { usageFault } from "./usage.ts";

type Work = (typeof workNames)[number];

/** The first that fits counts: a new cylinder has another bore, and its rings with it (judgement). */
const meant: readonly { readonly words: RegExp; readonly work: Work }[] = [
  { words: /overhaul|rebuil|reman|exchange|new engine/i, work: "rebuild" },
  { words: /cylinder head|head.*(?:off|skim|plane)/i, work: "head off" },
  { words: /gasket/i, work: "head gasket" },
  { words: /cylinder|barrel|jug|liner|sleeve|\bbor(?:e|ing)/i, work: "rebore" },
  { words: /\brings?\b|piston|hone/i, work: "re-ring" },
  { words: /lash|tappet|clearance/i, work: "valve lash" },
  { words: /valve|seat|guide/i, work: "valve job" },
  { words: /plug/i, work: "plugs" },
  { words: /belt|chain|timing/i, work: "timing drive" },
  { words: /additive|treatment/i, work: "additive" },
  { words: /oil/i, work: "oil change" },
  { words: /overheat|boil/i, work: "overheated" },
  { words: /meter|clock/i, work: "meter replaced" },
];

/** @throws Stop 2 for a word that is none of them, with the line that has one and all else that was typed */
export const checkWork = (args: Args, id: string): void => {
  const typed = args.text("what")?.trim() ?? "";
  if (typed === "" || workNames.some((name) => name === typed.toLowerCase())) return;
  const [near] = nearest(typed.toLowerCase(), workNames);
  const work = near ?? meant.find(({ words }) => words.test(typed))?.work ?? "other";
  const kept = ["cylinders", "new-baseline", "date", "meter", "by"].flatMap((name) => {
    const text = args.text(name);
    return text === undefined ? [] : [`--${name}`, text];
  });
  const told = [near === undefined ? typed : "", args.text("note") ?? ""].filter((text) => text !== "");
  const note = told.length === 0 ? [] : ["--note", told.join("; ")];
  const line = typedLine(["service", id, "--what", work, ...kept, ...note]);
  const why = near === undefined ? `the nearest is ${work}` : `did you mean ${work}?`;
  throw new Stop(2, [
    usageFault(
      "work-unknown",
      `--what ${typed} is none of the works known here`,
      workNames.join(", "),
      `${why}: ${line}`,
    ),
  ]);
};
