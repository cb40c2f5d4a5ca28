// Each kind of finding on one cylinder: how likely it is within each class of its table, readings with their own doubt.

import { median, normalCdf } from "../../statistics/index.ts";
import type { CylinderEvidence, Evidence } from "../evidence.ts";
import type { ClassShape, Faults, Finding, FindingName } from "../faults/faults.ts";
import { classDensities } from "./classes.ts";
import { type AtDay, type Day, dryMeans, levelDoubt } from "./day.ts";
import { pathClasses } from "./path.ts";

interface Context {
  readonly finding: FindingName;
  readonly evidence: Evidence;
  readonly faults: Faults;
  readonly day: Day;
  readonly cylinder: number;
}
/** What of the day a finding depends on. */
export type DayPart = "level" | "oil" | "tester" | "nothing";

interface Classes {
  /** Density in each class of the table at a place of the day. */
  readonly classesAt: (at: AtDay) => readonly number[];
  /** How far the column of the cause counts against that of no fault; absent: wholly. */
  readonly trustAt?: (at: AtDay) => number;
  readonly dependsOn: DayPart;
}
type Reader = (own: CylinderEvidence, context: Context) => Classes | undefined;

const fixed = (classes: readonly number[]): Classes => ({ classesAt: () => classes, dependsOn: "nothing" });

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** ρ = p/M, its density that of p: f/M. */
const level: Reader = ({ dry = [] }, { faults, day }) => {
  if (dry.length === 0) return undefined;
  const p = meanOf(dry);
  return {
    dependsOn: "level",
    classesAt: ({ level: M }) => {
      const ratio = p / M;
      const u = levelDoubt(ratio, dry.length, faults);
      const densities = classDensities(faults.findings.level.shapes, ratio, u);
      for (let k = 0; k < densities.length; k += 1) densities[k] = ((densities[k] ?? 0) * day.unit) / M;
      return densities;
    },
  };
};

/** g = (w/c − p)/p_ref, u = .015·√((w/c)² + p²)/p_ref + .001. Held against the reference, not
 *  against the cylinder's own reading: a percentage of a nearly dead reading is noise. */
const wet: Reader = ({ dry = [], wet: w }, { faults, day }) => {
  const { reference } = day;
  if (dry.length === 0 || w === undefined || reference === undefined) return undefined;
  const p = meanOf(dry);
  return {
    dependsOn: "oil",
    classesAt: ({ oilFactor }) => {
      const { shapes } = faults.findings.wet;
      const u = (faults.settings.repeatability * Math.hypot(w / oilFactor, p)) / reference + 0.001;
      return classDensities(shapes, within(shapes, (w / oilFactor - p) / reference), u);
    },
  };
};

/** The share of the first stroke beside that of the others, from two cylinders on. */
const firstStroke: Reader = (_, { evidence, faults, cylinder }) => {
  const shares = dryMeans(evidence).map((p, i) => {
    const f = evidence.cylinders[i]?.firstStroke;
    return p === undefined || f === undefined || p <= 0 ? undefined : f / p;
  });
  return shareClasses(besideOthers(shares, cylinder), 0.03, faults.findings["first-stroke"]);
};

const running: Reader = (_, { evidence, faults, cylinder }) => {
  const readings = evidence.cylinders.map((one) => one.running);
  return shareClasses(besideOthers(readings, cylinder), 0.04, faults.findings.running);
};

/** @param doubt - relative, of the share */
const shareClasses = (
  share: number | undefined,
  doubt: number,
  { shapes }: Pick<Finding, "shapes">,
): Classes | undefined => {
  if (share === undefined) return undefined;
  const x = within(shapes, share);
  return fixed(classDensities(shapes, x, doubt * x));
};

/** A value beyond the outermost classes counts as on their bound: the worst reading there is still says something. The
 *  level alone is left as it is, for there the level of the day can move instead. */
const within = (shapes: readonly ClassShape[], x: number): number => {
  const bounds = shapes.flatMap((shape) => (shape.kind === "between" ? [shape.low, shape.high] : []));
  return Math.min(Math.max(...bounds), Math.max(Math.min(...bounds), x));
};

/** Own value over the median of all; undefined where it is alone or there is nothing to compare with. */
const besideOthers = (values: readonly (number | undefined)[], cylinder: number): number | undefined => {
  const known = values.filter((value) => value !== undefined);
  const own = values[cylinder];
  if (own === undefined || known.length < 2) return undefined;
  const middle = median(known);
  return middle > 0 ? own / middle : undefined;
};

/** Two takes or more: σ^−(m−1)·exp(−SS/2σ²) of ln p, unstable and stable, beside the larger of the two. A take of nothing
 *  counts as a hundredth of the cylinder's best: a valve that sticks now and then reads well on one turn and nothing on
 *  the next. */
const repeats: Reader = ({ dry = [] }, { faults }) => {
  const best = Math.max(0, ...dry);
  if (dry.length < 2 || best <= 0) return undefined;
  const logs = dry.map((value) => Math.log(Math.max(value, 0.01 * best)));
  const centre = meanOf(logs);
  const squares = logs.reduce((sum, y) => sum + (y - centre) ** 2, 0);
  const { unstableSpread, stableSpread } = faults.settings;
  const ln = [unstableSpread, stableSpread].map(
    (spread) => (1 - dry.length) * Math.log(spread) - squares / (2 * spread ** 2),
  );
  return fixed(ln.map((one) => Math.exp(one - Math.max(...ln))));
};

/** Densities in ln alpha. */
const leak: Reader = ({ leak: measured }, { faults }) => {
  if (measured === undefined) return undefined;
  const shapes = lnShapes(faults);
  const doubt = measured.doubt ?? faults.settings.leakDoubt;
  return {
    dependsOn: "tester",
    classesAt: ({ testerShift }) =>
      classDensities(shapes, within(shapes, Math.log(measured.alpha) + testerShift), doubt),
  };
};

const lnShapes = ({ findings }: Faults): readonly ClassShape[] =>
  findings.leak.shapes.map((shape) =>
    shape.kind === "between"
      ? { kind: "between", low: Math.log(shape.low), high: Math.log(shape.high) }
      : shape,
  );

/** How far the path counts: as sure as the leak is one. P(alpha above .80), at least the tables' least; .8 unmeasured. */
const path: Reader = ({ heard, leak: measured }, { faults }) => {
  if (heard === undefined) return undefined;
  const { pathWeightLeast, leakDoubt } = faults.settings;
  const shapes = lnShapes(faults);
  const trustAt = ({ testerShift }: AtDay): number => {
    if (measured === undefined) return 0.8;
    const ln = within(shapes, Math.log(measured.alpha) + testerShift);
    const above = (ln - Math.log(0.8)) / (measured.doubt ?? leakDoubt);
    return Math.max(pathWeightLeast, normalCdf(above));
  };
  const classes = pathClasses(heard, faults.findings.path.classes);
  return { classesAt: () => classes, trustAt, dependsOn: measured === undefined ? "nothing" : "tester" };
};

/** Doubt of ln q, q the leak after over the leak before. @source handbook/diagnosis.md 3, judgement */
const ratioDoubt = 0.12;

/** P(falls) = Φ((ln edge − ln q)/.12), as soft evidence between the two classes. */
const falls =
  (pick: (own: CylinderEvidence) => number | undefined): Reader =>
  (own, { faults }) => {
    const q = pick(own);
    if (q === undefined) return undefined;
    const fallen = normalCdf((Math.log(faults.settings.fallEdge) - Math.log(q)) / ratioDoubt);
    return fixed([fallen, 1 - fallen]);
  };

/** What the history reports, through how often it reports what truly happened. */
const onset: Reader = ({ onset: report }, { faults }) => {
  if (report === undefined) return undefined;
  const place = faults.onset.reports.indexOf(report);
  return fixed(faults.onset.rows.map((row) => row[place] ?? 0));
};

/** A finding that is one of the words of its classes. @throws RangeError for a word that is none of them */
const word: Reader = (own, { finding, faults }) => {
  const seen = Object.entries(own.seen ?? {}).find(([name]) => name === finding)?.[1];
  if (seen === undefined) return undefined;
  const { classes } = faults.findings[finding];
  if (!classes.includes(seen))
    throw new RangeError(`diagnosis: ${finding} is one of ${classes.join(", ")}, got ${seen}`);
  return fixed(classes.map((name) => (name === seen ? 1 : 0)));
};

/** Gas in the coolant is a sign of the engine, not of one cylinder. */
const none: Reader = () => undefined;

/** How each finding is read from the evidence; undefined where it was not taken. */
export const readers: Readonly<Record<FindingName, Reader>> = {
  level,
  wet,
  "first-stroke": firstStroke,
  repeats,
  leak,
  path,
  oiled: falls(({ oiled }) => oiled),
  lower: falls(({ lower }) => lower),
  onset,
  running,
  lash: word,
  borescope: word,
  gas: none,
  "second-gauge": word,
  warm: word,
  conditions: word,
  reseat: word,
  reindex: word,
  release: word,
};
