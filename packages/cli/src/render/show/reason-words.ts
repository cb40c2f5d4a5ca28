// What speaks for a cause or against it, in words that go after `for` or `though`.

import type { CauseReason } from "@sealtrend/core";

type Words = Readonly<Partial<Record<string, string>>>;

const phrases: Readonly<Record<CauseReason["finding"], Words>> = {
  level: {
    dead: "it holds nothing",
    "very low": "it reads very low",
    low: "it reads low",
    slight: "it reads a little low",
    normal: "it reads as a sound one",
    high: "it reads high",
  },
  wet: {
    none: "oil did not raise it",
    weak: "oil raised it a little",
    supports: "oil raised it",
    strong: "oil raised it much",
  },
  "first-stroke": {
    below: "its first stroke is low",
    same: "its first stroke is like the others'",
    above: "it hardly builds after the first stroke",
  },
  repeats: { unstable: "its readings do not repeat", stable: "its readings repeat" },
  leak: {
    normal: "it leaks no more than a sound one",
    little: "it leaks a little",
    raised: "it leaks",
    gross: "it leaks much",
  },
  path: {
    crankcase: "its air goes to the crankcase",
    exhaust: "its air comes out at the exhaust",
    intake: "its air comes out at the intake",
    neighbour: "its air comes out at a neighbour",
    coolant: "its air goes into the coolant",
    plug: "its air comes out at plug or joint",
    none: "no air is heard",
  },
  oiled: { falls: "oil closed its leak", unchanged: "oil did not close its leak" },
  lower: { falls: "it leaks less lower down", unchanged: "it leaks as much lower down" },
  onset: {
    sudden: "it fell at once",
    gradual: "it fell bit by bit",
    "cannot tell": "it fell, at once or bit by bit",
    steady: "it has been steady for years",
  },
  running: {
    low: "it reads low running",
    normal: "running it reads like the others",
    high: "it reads high running",
  },
  lash: { tight: "its lash is tight", right: "its lash is right", loose: "its lash is loose" },
  borescope: {
    nothing: "nothing was seen inside",
    valve: "a valve looks bad",
    bore: "the bore looks bad",
    piston: "the piston looks bad",
    deposits: "deposits were seen",
    "liquid or rust": "liquid or rust was seen",
  },
  gas: {
    positive: "combustion gas is in the coolant",
    negative: "no combustion gas is in the coolant",
  },
  "second-gauge": {
    "normal now": "another gauge reads it well",
    same: "another gauge reads the same",
  },
  warm: { recovers: "warm it recovers", same: "warm it reads the same" },
  conditions: {
    recovers: "it recovers with battery and throttle right",
    same: "battery and throttle change nothing",
  },
  reseat: { recovers: "tapped, it seals again", same: "tapping the valve changes nothing" },
  reindex: {
    "still there": "with its valves shut the neighbour still breathes",
    gone: "with its valves shut the neighbour is silent",
  },
  release: {
    recovers: "it recovers without the release",
    same: "without the release it reads the same",
  },
  "oil use": { present: "the engine uses oil or smokes blue", absent: "the engine uses no oil" },
  "coolant loss": { present: "coolant is lost", absent: "no coolant is lost" },
  miss: { present: "it misses", absent: "it does not miss" },
  "blow-by": { present: "the crankcase blows", absent: "the crankcase does not blow" },
};

export const reasonText = ({ finding, word }: Pick<CauseReason, "finding" | "word">): string =>
  phrases[finding][word] ?? `${finding}: ${word}`;
