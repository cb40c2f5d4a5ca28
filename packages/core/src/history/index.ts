export { analyseHistory } from "./analyse-history.ts";
export { coursesOf, type Courses, type CylinderCourse } from "./courses.ts";
export type {
  HistoryAxis,
  HistoryCell,
  HistoryInput,
  HistoryKind,
  HistoryService,
  HistoryTest,
  TestUse,
} from "./input.ts";
export type { CylinderHistory, HistoryResult, HistoryTestUsed, Mirrored, ServiceResult } from "./result.ts";
export type { Change, Direction } from "./change-test.ts";
export type { AlarmRule, Course } from "./course.ts";
export type { EngineWide, EngineWideSlope, EngineWideWord } from "./engine-wide.ts";
export type { Epoch } from "./epochs.ts";
export { believedPerYear } from "./chances.ts";
export { believing, chanceAbove, type Crossing, type KnownLine } from "./forecast.ts";
export type { AbsoluteCourse } from "./absolute-course.ts";
export type { ServiceStep, StepVerdict } from "./service-step.ts";
export type { RobustSlope, SlopeTest } from "./slope-test.ts";
export type { Shape, StepOrLine } from "./step-or-line.ts";
export type { BaselineTest } from "./two-below-baseline.ts";
export { testsUntilShown, usualSpacing, type LossPlan, type LossShown } from "./tests-until-shown.ts";
export { wholeTestsUntilShown, type WholeLossPlan } from "./whole-tests-until-shown.ts";
