// Why a reading is not told as another tester's, and what can be done instead.

import {
  type HolesRefusal,
  type HoleReading,
  type LeakQuestion,
  type PressureUnit,
  type RestateRefusal,
  fromSi,
} from "@sealtrend/core/parts";
import { prose } from "../prose.ts";
import { fixed, percent } from "../words.ts";
import type { RestateShown } from "./restate-shown.ts";

/** Prose in which a doubt stays beside its number, and a command whole. */
export const held = (text: string, width: number, lead = ""): readonly string[] =>
  prose(
    text
      .replace(/(\S) ± /g, "$1\u00a0±\u00a0")
      .replaceAll("± ", "±\u00a0")
      .replace(/sealtrend [^,.;]*/g, (command) => command.replaceAll(" ", "\u00a0")),
    width,
    lead,
  );

/** A pressure as it was typed. */
export const plain = (pascals: number, unit: PressureUnit): string =>
  String(Number(fromSi(pascals, unit).toPrecision(4)));

interface Words {
  /** After `Not restated: `. */
  readonly reason: string;
  readonly next: string;
}

const onIt = "read this cylinder on the other tester itself";

const refusals: Readonly<
  Record<RestateRefusal | HolesRefusal, (shown: RestateShown, unit: PressureUnit) => Words>
> = {
  "supply-unknown": () => ({
    reason: "the supply pressure it was read at is not known",
    next: "add --regulated: the pressure on the first dial",
  }),
  "restrictor-unknown": ({ tester }) => ({
    reason: "the bore of a restrictor is not known",
    next: `measure it with drill shanks, or read drilled holes of known size: ${calibrate(tester)}`,
  }),
  "makes-differ": ({ answer }) => ({
    reason:
      answer.byHoles === undefined
        ? "the two restrictors are not known to be made alike, so the same leak reads differently on them"
        : "the drilled holes and the other restrictor are not known to be made alike, so they pass air differently",
    next:
      answer.byHoles === undefined
        ? "add both --cd and --to-cd, or read one drilled hole on both testers"
        : "read one of the drilled holes on the other tester",
  }),
  "gauges-disagree": ({ answer: { reading, judgement } }, unit) => ({
    reason:
      reading === undefined || judgement?.kind !== "disagree"
        ? "the cylinder reads above its supply"
        : `the cylinder reads ${plain(reading.cylinder, unit)} ${unit}, above its supply of ${plain(reading.supply, unit)} ${unit}; by their doubt at most ${short(2 * judgement.uDrop, unit)} ${unit} above`,
    next: "see which dial is which; with the valve shut both must read the same",
  }),
  "too-tight": () => ({
    reason: "the cylinder is tighter than these dials can show",
    next: "finer dials or a smaller restrictor; with the valve shut see that both dials agree, and add --matched yes",
  }),
  "no-seal": () => ({
    reason: "no seal is measurable, the leak takes all the air there is",
    next: "listen where the air goes: sealtrend how leak-down ENGINE",
  }),
  "band-wide": ({ answer: { restated } }) => ({
    reason:
      restated === undefined
        ? "too much depends on the shape of the leak"
        : `too much depends on the shape of the leak: ${percent(restated.reading.lost)} lost through a hole, ${percent(restated.laminarLost)} through a long thin gap`,
    next: onIt,
  }),
  "dials-coarse": () => ({
    reason: "these dials leave the size of the leak open by more than a quarter",
    next: `${onIt}; if both dials agree with the valve shut, add --matched yes`,
  }),
  "holes-outside": ({ question, tester }, unit) => ({
    reason: `the reading lies outside what the open holes read on this tester span, ${spanOfReadings(question, unit)}`,
    next: `read a ${beyond(question)} hole on it too: ${calibrate(tester)}`,
  }),
  "holes-contradictory": ({ tester }) => ({
    reason: "the open holes read on this tester contradict one another or the supply",
    next: `read them again: ${calibrate(tester)}`,
  }),
  "holes-too-few": ({ tester }) => ({
    reason: "one open hole measures a leak only where the supply is known",
    next: `add --regulated, or read a second hole: ${calibrate(tester)}`,
  }),
  "holes-other-supply": ({ answer: { reading }, question: { knownHoles } }, unit) => ({
    reason: `the open holes were read on this tester at ${plain(knownHoles?.supply ?? 0, unit)} ${unit}, the cylinder at ${plain(reading?.supply ?? 0, unit)} ${unit}`,
    next: "read the cylinder at the supply of the holes",
  }),
};

/** How open holes are told to the logbook. @param tester - its name; absent: any */
export const calibrate = (tester = "TESTER"): string =>
  `sealtrend gauge calibrate ${tester} --hole SIZE:READING`;

const short = (pascals: number, unit: PressureUnit): string =>
  String(Number(fromSi(pascals, unit).toPrecision(2)));

const ends = (holes: readonly HoleReading[]): readonly [number, number] => {
  const reads = holes.map((one) => one.reads);
  return [Math.min(...reads), Math.max(...reads)];
};

/** `52 to 74 psi`. */
const spanOfReadings = ({ typed, knownHoles }: LeakQuestion, unit: PressureUnit): string => {
  const [low, high] = ends(knownHoles?.holes ?? []);
  return typed.kind === "pressure"
    ? `${plain(low, unit)} to ${plain(high, unit)} ${unit}`
    : `${fixed(100 * low, 0)} to ${percent(high)} lost`;
};

/** On which side of the span it lies: a smaller hole holds more, and loses less. */
const beyond = ({ typed, knownHoles }: LeakQuestion): "smaller" | "larger" => {
  const [low, high] = ends(knownHoles?.holes ?? []);
  const isSmall = typed.kind === "pressure" ? typed.cylinder > high : typed.lost < low;
  return isSmall ? "smaller" : "larger";
};

/** The words of a refusal. */
export const refusalWords = (
  refused: RestateRefusal | HolesRefusal,
  shown: RestateShown,
  unit: PressureUnit,
): Words => refusals[refused](shown, unit);
