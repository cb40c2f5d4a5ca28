// When a reading is not brought to another cranking speed, and why, in words that follow "Not brought to 250 rpm: ".

import type { LossFreePressure } from "./loss-free-pressure.ts";

/** Speeds the rule was tried at [rpm]. */
const tried = { least: 120, most: 450 } as const;
/** N/N_ref. */
const reach = { least: 0.6, most: 1.67 } as const;
/** All but the reading's own scatter, in ln P. */
const mostDoubt = 0.06;

/** What a reason names [rpm, or ln units for the doubt]; each needs some of them. */
interface Facts {
  /** Cylinders without a speed; empty for all of them. */
  readonly labels?: readonly string[];
  readonly at?: number;
  readonly slow?: number;
  readonly fast?: number;
  readonly doubt?: number;
}

const rpm = (speed = 0): string => speed.toFixed(0);

const words = {
  "speed-not-recorded": ({ labels = [] }: Facts) =>
    labels.length === 0
      ? "the cranking speed was not recorded"
      : `the cranking speed of ${labels.join(", ")} was not recorded`,
  "no-reference-speed": () => "neither the maker's speed nor that of a test that counts is known",
  "speed-out-of-range": ({ at }: Facts) =>
    `${rpm(at)} rpm lies outside ${rpm(tried.least)} to ${rpm(tried.most)} rpm, where the rule was tried`,
  "speeds-too-far-apart": ({ slow, fast }: Facts) =>
    `${rpm(slow)} and ${rpm(fast)} rpm lie too far apart for the rule (more than 5 to 3)`,
  "loss-free-too-low": () =>
    "the pressure kept as this engine's reading without any loss cannot be right: the middle cylinder reads more",
  "too-uncertain": ({ doubt = 0 }: Facts) =>
    `the step itself would be ${(100 * doubt).toFixed(0)} % in doubt, more than ${String(100 * mostDoubt)} %`,
  "throttle-closed": () => "the throttle was closed",
  cold: () => "the engine was cold, other tests of it were warm",
  "cold-for-maker": () =>
    "the engine was cold, and the maker's figures are for a warm one unless the manual says cold",
  release: () => "the compression release was working, and how that goes with the speed is not known",
  "release-unknown": () => "whether the compression release was at work is not known",
  "two-stroke": () => "how a two-stroke's reading goes with the speed was not examined",
  "speeds-too-close": ({ slow, fast }: Facts) =>
    `${rpm(slow)} and ${rpm(fast)} rpm lie too close: the second should be 1.25 times the first`,
  "not-rising": ({ slow, fast }: Facts) =>
    `the reading did not rise from ${rpm(slow)} to ${rpm(fast)} rpm, as every loss makes it`,
  "rises-too-much": ({ slow, fast }: Facts) =>
    `the reading rose more from ${rpm(slow)} to ${rpm(fast)} rpm than any loss makes it`,
} as const satisfies Record<string, (facts: Facts) => string>;

export type SpeedRefusalCode = keyof typeof words;

/** Why a reading is not brought to another cranking speed. */
export interface SpeedRefusal<C extends SpeedRefusalCode = SpeedRefusalCode> {
  readonly code: C;
  /** Begins small: it goes on in a sentence. */
  readonly text: string;
}

/** A refusal with its reason in words. */
export const speedRefusal = <C extends SpeedRefusalCode>(code: C, facts: Facts = {}): SpeedRefusal<C> => ({
  code,
  text: words[code](facts),
});

/** The refusal of the first speed that lies outside those the rule was tried at. */
export const outsideSpeeds = (speeds: readonly number[]): SpeedRefusal<"speed-out-of-range"> | undefined => {
  const at = speeds.find((speed) => speed < tried.least || speed > tried.most);
  return at === undefined ? undefined : speedRefusal("speed-out-of-range", { at });
};

/** Whether these speeds can be brought to one another at all. @param to - the reference speed [rpm] */
export const refusedSpeeds = (from: readonly number[], to: number): SpeedRefusal | undefined => {
  const outside = outsideSpeeds(from) ?? outsideSpeeds([to]);
  if (outside !== undefined) return outside;
  const far = from.find((speed) => speed / to < reach.least || speed / to > reach.most);
  return far === undefined
    ? undefined
    : speedRefusal("speeds-too-far-apart", { slow: Math.min(far, to), fast: Math.max(far, to) });
};

/** Whether what is known of P_0 can carry the correction of a test.
 *  @param middle - its middle reading [Pa]  @param doubt - of the correction of that reading, without its own scatter */
export const refusedLossFree = (
  { pressure }: LossFreePressure,
  { middle, doubt }: { readonly middle: number; readonly doubt: number },
): SpeedRefusal | undefined => {
  if (pressure <= middle) return speedRefusal("loss-free-too-low");
  return doubt > mostDoubt ? speedRefusal("too-uncertain", { doubt }) : undefined;
};
