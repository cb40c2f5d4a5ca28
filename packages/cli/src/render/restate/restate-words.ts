// Why a reading is not told as another tester's, and what can be done instead.

import type { LeakAnswer, RestateRefusal } from "@sealtrend/core";
import { prose } from "../prose.ts";
import { percent } from "../words.ts";

/** Prose in which a doubt stays beside its number. */
export const held = (text: string, width: number, lead = ""): readonly string[] =>
  prose(text.replace(/(\S) ± /g, "$1\u00a0±\u00a0").replaceAll("± ", "±\u00a0"), width, lead);

interface Words {
  /** After `Not restated: `. */
  readonly reason: string;
  readonly next: string;
}

const refusals: Readonly<Record<RestateRefusal, (answer: LeakAnswer) => Words>> = {
  "supply-unknown": () => ({
    reason: "the supply pressure it was read at is not known",
    next: "add --regulated: the pressure on the first dial",
  }),
  "restrictor-unknown": () => ({
    reason: "the bore of a restrictor is not known",
    next: "measure it with drill shanks, or read a drilled hole of known size on both testers",
  }),
  "makes-differ": () => ({
    reason: "the two restrictors are not known to be made alike, so the same leak reads differently on them",
    next: "add both --cd and --to-cd, or read one drilled hole on both testers",
  }),
  "gauges-disagree": () => ({
    reason: "the cylinder reads above its supply: the dials disagree",
    next: "shut the valve and read both dials",
  }),
  "too-tight": () => ({
    reason: "the cylinder is tighter than these dials can show",
    next: "finer dials or a smaller restrictor; with the valve shut see that both dials agree, and add --matched yes",
  }),
  "no-seal": () => ({
    reason: "no seal is measurable, the leak takes all the air there is",
    next: "listen where the air goes: sealtrend\u00a0how\u00a0leak-down",
  }),
  "band-wide": ({ restated }) => ({
    reason:
      restated === undefined
        ? "too much depends on the shape of the leak"
        : `too much depends on the shape of the leak: ${percent(restated.reading.lost)} lost through a hole, ${percent(restated.laminarLost)} through a long thin gap`,
    next: "read this cylinder on the other tester itself",
  }),
  "dials-coarse": () => ({
    reason: "these dials leave the size of the leak open by more than a quarter",
    next: "read this cylinder on the other tester itself; if both dials agree with the valve shut, add --matched yes",
  }),
};

/** The words of a refusal. */
export const refusalWords = (refused: RestateRefusal, answer: LeakAnswer): Words => refusals[refused](answer);
