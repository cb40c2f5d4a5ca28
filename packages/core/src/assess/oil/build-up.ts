// How a cylinder builds up: its first stroke as a share of its last. The share is set by the gauge and its hose, so only
// cylinders read by one gauge compare. What a low or a high share means is an empirical rule of workshop manuals: a leak
// through one hole does not make it in the cycle model, so it is a weak sign and stays one.

import { reachedBy } from "../../cranking/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { readingUncertainty } from "../../spread/index.ts";
import { median } from "../../statistics/index.ts";
import type { CylinderAssessment, PressureValue } from "../assessment.ts";
import type { BuildUp, BuildUpPattern, CylinderBuildUp } from "./build-up-finding.ts";
import type { EngineFigures } from "../figures.ts";
import { type GaugeDoubt, gaugeDoubt } from "../values/pressure-values.ts";
import { valuesOf } from "../values/values.ts";

/** Bounds of relative. @source handbook/diagnosis.md, first-stroke share (judgement); GM 1990 to 2009, Isuzu, Ford Probe
 *  1997, Skoda, Nissan and Mercedes manuals for what they mean (handbook/trade.md A3) */
const bounds = { low: 0.85, high: 1.15 };
const fewest = 3;

/** Undefined unless one gauge read first and last stroke of at least three cylinders. */
export const buildUp = (
  record: EngineRecord,
  test: Test,
  {
    cylinders,
    figures,
  }: { readonly cylinders: readonly CylinderAssessment[]; readonly figures: EngineFigures },
): BuildUp | undefined => {
  const [dry, first] = [valuesOf(test, "dry"), valuesOf(test, "first-stroke")];
  if (dry === undefined || first === undefined || dry.gauge !== first.gauge) return undefined;
  const doubt = gaugeDoubt(record, dry, figures);
  const read = cylinders.flatMap((cylinder) => {
    const share = shareOf(cylinder, doubt);
    return share === undefined ? [] : [{ cylinder, ...share }];
  });
  if (read.length < fewest) return undefined;
  const middle = median(read.map(({ share }) => share));
  const reached = reachedOf(test, middle);
  return {
    ...(dry.gauge === undefined ? {} : { gauge: dry.gauge }),
    middle,
    bounds,
    cylinders: read.map(({ cylinder: { label, dryStanding }, share, uncertainty }): CylinderBuildUp => {
      const relative = share / middle;
      const low = dryStanding === "suspect" || dryStanding === "lagging";
      const odd = low ? undefined : oddOf(relative, uncertainty);
      return {
        label,
        share,
        relative,
        uncertainty,
        ...(low ? { pattern: patternOf(relative) } : {}),
        ...(odd === undefined ? {} : { odd }),
      };
    }),
    ...(reached === undefined ? {} : { reached }),
  };
};

const shareOf = (
  { pressures: { dry, "first-stroke": first } }: CylinderAssessment,
  doubt: GaugeDoubt,
): { readonly share: number; readonly uncertainty: number } | undefined => {
  if (!isTold(dry) || !isTold(first)) return undefined;
  const scatter = [dry, first].map(
    ({ value, readings }) =>
      readingUncertainty({ pressure: value, repeats: readings.length }, doubt, 0).reading,
  );
  return { share: first.value / dry.value, uncertainty: Math.hypot(...scatter) };
};

const isTold = (value: PressureValue | undefined): value is PressureValue =>
  value !== undefined && value.value > 0 && !value.pegged && value.slip === undefined;

const patternOf = (relative: number): BuildUpPattern =>
  relative < bounds.low ? "builds-up" : relative > bounds.high ? "stays-flat" : "as-others";

/** The scatter of the middle share counts as much again as that of its own, at most. */
const oddOf = (relative: number, uncertainty: number): "late" | "early" | undefined => {
  const pattern = patternOf(relative);
  if (pattern === "as-others" || Math.abs(Math.log(relative)) < 1.96 * Math.SQRT2 * uncertainty)
    return undefined;
  return pattern === "builds-up" ? "late" : "early";
};

/** Only where every cylinder got the same number of strokes. */
const reachedOf = ({ conditions, perCylinder }: Test, middle: number): BuildUp["reached"] => {
  const { strokes } = conditions;
  if (strokes === undefined || strokes < 2 || perCylinder.strokes !== undefined) return undefined;
  const share = reachedBy(middle, strokes);
  return share === undefined ? undefined : { strokes, share };
};
