// What the history of an engine says, cylinder by cylinder and as a whole. Slopes, contrasts and effects in ln units;
// slopes a year on dates, a 1000 units on a meter axis. Places of tests count in `HistoryResult.tests`.

import type { Change, Direction } from "./change-test.ts";
import type { AlarmRule, Course } from "./course.ts";
import type { EngineWide } from "./engine-wide.ts";
import type { Epoch } from "./epochs.ts";
import type { Crossing } from "./forecast.ts";
import type { EngineStay, Stay } from "./chances.ts";
import type { AbsoluteCourse } from "./absolute-course.ts";
import type { HistoryAxis, TestUse } from "./input.ts";
import type { AdjoiningRise } from "./service-adjoining.ts";
import type { ServiceStep } from "./service-step.ts";
import type { RobustSlope, SlopeTest } from "./slope-test.ts";
import type { StepOrLine } from "./step-or-line.ts";
import type { BaselineTest } from "./two-below-baseline.ts";

/** What the tests of an engine say over the years: slopes, contrasts and effects in ln units, a year or 1000 units of
 *  the meter. */
export interface HistoryResult {
  readonly axis: HistoryAxis & {
    /** What one unit of slope counts in: 1 year, or 1000 units of the meter. */
    readonly slopePer: 1 | 1000;
    /** Multiply a slope by this for a year: 1 on dates; absent on a meter axis with less than a year of tests. */
    readonly perYear?: number;
  };
  /** After merging tests of one day; in order. */
  readonly tests: readonly HistoryTestUsed[];
  /** In the order of the labels. */
  readonly cylinders: readonly CylinderHistory[];
  readonly common: EngineWide & {
    /** a_t of every test, aligned with `tests`; undefined where the test does not count or came before `since`. */
    readonly effects: readonly (number | undefined)[];
  };
  readonly epochs: readonly Epoch[];
  readonly services: readonly ServiceResult[];
  /** The weakest cylinder by its chances of staying above its limits; empty where a cylinder has none, or where one moved
   *  in a step or its last reading alone speaks against it, so that no line can be drawn on. */
  readonly weakest: readonly EngineStay[];
  /** The scatter of one contrast about its line (C.3), and its degrees of freedom. */
  readonly scatter: { readonly s: number; readonly df: number };
  /** From 20 tests: about 1 healthy engine in 20 shows such an alarm by chance. */
  readonly manyLooks: "yes" | "no";
}

export interface HistoryTestUsed {
  readonly ids: readonly string[];
  readonly x: number;
  readonly years: number;
  readonly use: TestUse;
  readonly gauge?: string;
  /** The gauge that its readings were brought to; absent = its own. */
  readonly countsAs?: string;
}

/** What changed at a piece of work: the cylinders it touched, before and after. */
export interface ServiceResult {
  /** Place of the first test after it; the number of tests where none followed. */
  readonly before: number;
  readonly why: string;
  /** `untouched`: each against those left alone; `earlier-level`: all were touched, so only the level of the engine
   *  before and after is left to compare; `nothing`: what followed reads on another scale. */
  readonly against: "untouched" | "earlier-level" | "nothing";
  /** One for each renewed cylinder, or a single one with the labels of all; none against nothing. */
  readonly steps: readonly (ServiceStep & { readonly labels: readonly string[] })[];
  /** Cylinders that had just come down and rose from the test before to the test after; absent where none did. */
  readonly adjoining?: readonly AdjoiningRise[];
}

/** With two cylinders a contrast cannot tell whose change it is. `named`: the engine-wide channel does not rise, so the
 *  falling one may be named; of one that came back, the other stayed at its own level the while. `either`: one has lost or the
 *  other has gained. `no`: not two cylinders. */
export type Mirrored = "no" | "named" | "either";

/** One cylinder over the years, against its fellows: contrasts and slopes in ln units, its course and the alarms. */
export interface CylinderHistory {
  readonly label: string;
  readonly course: Course;
  readonly leaning?: "down";
  readonly mirrored: Mirrored;
  /** Rules that raise the alarm; empty for none. */
  readonly alarms: readonly AlarmRule[];
  /** First test of the current epoch, by place; absent where none was made in it. */
  readonly since?: number;
  /** Contrasts in the current epoch. */
  readonly count: number;
  /** Aligned with `tests`; undefined where there is none. Each epoch has its own zero. */
  readonly contrasts: readonly (number | undefined)[];
  /** ln of the ratio to the median of the others, aligned with `tests`: nothing subtracted. */
  readonly ratios: readonly (number | undefined)[];
  /** Mean of those that count in the current epoch: where it stands among its fellows, steady or not. */
  readonly meanRatio?: number;
  /** ln of its own corrected readings, aligned with `tests`; undefined where there is none. */
  readonly levels: readonly (number | undefined)[];
  /** Places of tests in which it held nothing. */
  readonly noCompression: readonly number[];

  /** Slopes and bounds: from four contrasts at three places on. */
  readonly theilSen?: RobustSlope;
  readonly pooled?: SlopeTest;
  /** The slope test of the alarm. */
  readonly ownScatter?: SlopeTest;
  /** From four contrasts on. */
  readonly twoBelow?: BaselineTest;
  /** One-sided 95 % bound of the loss; below .02 a year (.05 over the span where no year is known) is steady. */
  readonly lossBound?: number;
  /** The slowest loss that this many tests would have shown. */
  readonly leastLossShown?: number;

  /** The last test against all earlier ones of the epoch; a flag asks for a repeat. Of two cylinders none where it is only back where
   *  it began: then the other was low in between. */
  readonly change?: Change & { readonly test: number };
  /** A move seen in two of the first tests running, before a line can be drawn. `test`: place of the first of them. */
  readonly early?: { readonly direction: Direction; readonly test: number; readonly change: number };
  /** Of one stepped down in its first tests and lower again since: place of the last test that counts. Whether it went in a step or loses
   *  steadily cannot be told yet. */
  readonly wentOn?: number;
  /** Of one stepped down in its first tests that reads as before again, within what repeats explain: place of the first test from
   *  which it stayed so. The course stays, for what it is worth is not known; it is not low now. */
  readonly cameBack?: number;
  /** Of one stepped down in its first tests that read as before and then lower again: place of the first of these. */
  readonly lowAgain?: number;
  /** Of an alarmed cylinder with four contrasts, and of a rising one (whose `fall` is negative). `firstAfter`: place of the
   *  first test after the step. A step seen in the last reading only is the same as a bad reading; `last-two`: the one before
   *  it was low already, by less. */
  readonly shape?: StepOrLine & {
    readonly firstAfter?: number;
    readonly seenIn?: "last-reading-only" | "last-two" | "several";
  };

  /** Cranking only, where a limit was given. Places on the axis. */
  readonly limit?: Crossing & {
    readonly kind: "ratio-to-others";
    readonly value: number;
    readonly lastRatio: number;
  };
  /** Cranking only, where the minimum was given and the cylinder was read in its current epoch. */
  readonly absolute?: AbsoluteCourse;
  /** Chance of still being above the limit some years after the last test, within three times the observed span. */
  readonly stays: readonly Stay[];
}
