// Alarms over time: how often a healthy engine raises one, how often a failing cylinder is found and how soon. One
// pass over a history yields all rules at once, so that rules are compared on the same readings.

import { chance, drawHistory, inputOf, usualDesign } from "./simulate-draws.mjs";

/** The handbook's rules by name; each says whether one cylinder alarms at one look. `compared`: cylinders read. */
const rules = {
  /** C.4: both last readings below the baseline, or the slope with the scatter of the whole engine. */
  c4: ({ twoBelow, pooled }, compared) => twoBelow?.p < 0.01 / compared || pooled?.p < 0.001 / compared,
  /** L.8: the same, the cylinder's own scatter in the slope. */
  l8: ({ alarms }) => alarms.includes("two-below-baseline") || alarms.includes("slope"),
  twoBelow: ({ alarms }) => alarms.includes("two-below-baseline"),
  /** L.2 */
  early: ({ alarms }) => alarms.includes("early-change"),
  /** What one would do without comparing cylinders: a line through the readings of each by themselves, at .01/N. */
  raw: ({ levels }, compared, { core, x }) => {
    const { slope, slopeError } = core.leastSquares(x, levels);
    if (slope >= 0) return false;
    return core.studentCdf(slope / slopeError, x.length - 2) < 0.01 / compared;
  },
};

/** The look (tests made) at which each rule first alarms, infinite where it never does.
 *  @param failing - the cylinder that counts; absent = any does
 *  @param ends - whether an alarm on another cylinder ends the history as not found */
const firstAlarms = (core, history, { from, to, design, wanted, failing, ends }) => {
  const first = Object.fromEntries(wanted.map((rule) => [rule, undefined]));
  for (let look = from; look <= to; look += 1) {
    const { cylinders, tests } = core.analyseHistory(inputOf(history, look, design));
    const known = { core, x: tests.map(({ x }) => x) };
    for (const rule of wanted) {
      if (first[rule] !== undefined) continue;
      const alarmed = cylinders.map((cylinder) => rules[rule](cylinder, cylinders.length, known));
      if (failing === undefined ? alarmed.includes(true) : alarmed[failing]) first[rule] = look;
      else if (ends === "any-alarm" && alarmed.includes(true)) first[rule] = Infinity;
    }
    if (wanted.every((rule) => first[rule] !== undefined)) break;
  }
  return Object.fromEntries(wanted.map((rule) => [rule, first[rule] ?? Infinity]));
};

const collect = (runs, wanted, one) => {
  const found = Object.fromEntries(wanted.map((rule) => [rule, []]));
  for (let run = 0; run < runs; run += 1) {
    const first = one();
    for (const rule of wanted) found[rule].push(first[rule]);
  }
  return found;
};

/** First alarms of healthy engines, by rule. */
export const healthyAlarms = (
  core,
  { runs, seed, cylinders, from = 4, to = 12, wanted, design = usualDesign },
) => {
  const random = chance(seed);
  return collect(runs, wanted, () =>
    firstAlarms(core, drawHistory(random, design, { cylinders, tests: to }), { from, to, design, wanted }),
  );
};

/** A loss of `rate` a year from the date of test 4. */
export const wearing = (rate) => (k, x) => rate * Math.max(0, x[k] - x[3]);
/** A step that shows first at test 5. */
export const stepping = (size) => (k) => (k >= 4 ? size : 0);

/** Delays until the right cylinder alarms, by rule, in tests after test `after`; infinite = not by test `to`, or after an
 *  alarm on another one where `ends` is "any-alarm", as the handbook counts. */
export const failingAlarms = (
  core,
  { runs, seed, cylinders, fault, wanted, after = 4, to = 12, ends = "any-alarm", design = usualDesign },
) => {
  const random = chance(seed);
  const looks = collect(runs, wanted, () => {
    const failing = Math.floor(random.even() * cylinders);
    const lossOf = (i, k, x) => (i === failing ? fault(k, x) : 0);
    const history = drawHistory(random, design, { cylinders, tests: to, lossOf });
    return firstAlarms(core, history, { from: after + 1, to, design, wanted, failing, ends });
  });
  return Object.fromEntries(
    Object.entries(looks).map(([rule, first]) => [rule, first.map((look) => look - after)]),
  );
};

export const within = (looks, most) => looks.filter((look) => look <= most).length;
