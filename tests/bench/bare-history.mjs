// The history of an engine stripped to what it must compute: flat typed arrays, buffers made once, nothing checked, no
// words, every cylinder read once in every test. The base that the library's history is measured against.

import {
  inversionChances,
  medianOf,
  normalUpper,
  select,
  tCdf,
  tQuantile,
  varianceOfMedian,
} from "./bare-statistics.mjs";

/** Numbers a cylinder, in this order. */
export const figures =
  "slope low high intercept s orderP pooledP twoBelowT twoBelowP gainLine gainStep crossing from until stay1 stay2 stay3".split(
    " ",
  );

/** Everything that depends on the sizes alone: buffers and the table of orders.
 *  @returns a function of x [years], the pressures (tests by cylinders) and the limit as a ratio to the others, giving the
 *    figures of each cylinder one after the other. It gives back the same buffer every time. */
export const bareHistory = (tests, cylinders) => {
  const size = tests * cylinders;
  const [ln, contrasts, plain, result] = [size, size, size, cylinders * figures.length].map(
    (length) => new Float64Array(length),
  );
  const effects = new Float64Array(tests);
  const levels = new Float64Array(cylinders);
  const none = new Float64Array(cylinders);
  const pairs = (tests * (tests - 1)) / 2;
  const scratch = new Float64Array(Math.max(pairs, size));
  const own = new Float64Array(tests);
  const order = new Int32Array(cylinders);
  const chances = tests <= 40 ? inversionChances(tests) : undefined;
  const variance = (tests * (tests - 1) * (2 * tests + 5)) / 18;
  const upperTail = (s) =>
    chances === undefined ? normalUpper((s - 1) / Math.sqrt(variance)) : (chances[(pairs - s) >> 1] ?? 0);
  let steps = 0;
  while (upperTail(pairs - 2 * (steps + 1)) <= 0.025) steps++;
  const reference = varianceOfMedian(cylinders - 1);
  const assumed = (0.015 ** 2 + 0.01 ** 2) * (1 + reference);
  const line = { slope: 0, meanY: 0, sse: 0 };

  const polish = () => {
    effects.fill(0);
    levels.fill(0);
    for (let moved = 1, sweep = 0; moved >= 1e-12 && sweep < 200; sweep++) {
      moved = 0;
      for (let t = 0; t < tests; t++) {
        for (let i = 0; i < cylinders; i++) scratch[i] = ln[t * cylinders + i] - levels[i];
        const effect = medianOf(scratch, cylinders);
        moved = Math.max(moved, Math.abs(effect - effects[t]));
        effects[t] = effect;
      }
      for (let i = 0; i < cylinders; i++) {
        for (let t = 0; t < tests; t++) scratch[t] = ln[t * cylinders + i] - effects[t];
        const level = medianOf(scratch, tests);
        moved = Math.max(moved, Math.abs(level - levels[i]));
        levels[i] = level;
      }
    }
  };

  /** Each cylinder against the middle of the others, by rank from one sorted row. */
  const against = (off, into) => {
    const half = (cylinders - 1) >> 1;
    for (let t = 0; t < tests; t++) {
      const row = t * cylinders;
      for (let i = 0; i < cylinders; i++) {
        const value = ln[row + i] - off[i];
        let place = i;
        for (; place > 0 && scratch[place - 1] > value; place--) {
          scratch[place] = scratch[place - 1];
          order[place] = order[place - 1];
        }
        scratch[place] = value;
        order[place] = i;
      }
      for (let place = 0; place < cylinders; place++) {
        const high = scratch[half < place ? half : half + 1];
        const middle = cylinders % 2 === 0 ? high : (scratch[half - 1 < place ? half - 1 : half] + high) / 2;
        into[row + order[place]] = ln[row + order[place]] - middle;
      }
    }
  };

  const fit = (x, meanX, sxx, values, i) => {
    let sum = 0;
    for (let t = 0; t < tests; t++) sum += values[t * cylinders + i];
    const meanY = sum / tests;
    let sxy = 0;
    for (let t = 0; t < tests; t++) sxy += (x[t] - meanX) * (values[t * cylinders + i] - meanY);
    const slope = sxy / sxx;
    let sse = 0;
    for (let t = 0; t < tests; t++) {
      const rest = values[t * cylinders + i] - meanY - slope * (x[t] - meanX);
      sse += rest * rest;
    }
    line.slope = slope;
    line.meanY = meanY;
    line.sse = sse;
  };

  /** s^2 of one contrast over all cylinders, and its degrees of freedom. */
  const df = 6 + (cylinders - 1) * (tests - 2);
  const pooled = (x, meanX, sxx, values) => {
    let squares = 0;
    for (let i = 0; i < cylinders; i++) {
      fit(x, meanX, sxx, values, i);
      squares += line.sse;
    }
    return (6 * assumed + ((cylinders - 1) / cylinders) * squares) / df;
  };

  const lastSteps = () => {
    let count = 0;
    for (let t = 1; t < tests; t++)
      for (let i = 0; i < cylinders; i++)
        scratch[count++] = Math.abs(contrasts[t * cylinders + i] - contrasts[(t - 1) * cylinders + i]);
    const measured = (1.4826 * medianOf(scratch, count)) / Math.SQRT2;
    return {
      stepDf: 6 + count / 2,
      stepVariance: (6 * assumed + (count / 2) * measured ** 2) / (6 + count / 2),
    };
  };

  const robust = (x, at) => {
    let count = 0;
    let s = 0;
    for (let k = 1; k < tests; k++)
      for (let j = 0; j < k; j++) {
        const rise = own[k] - own[j];
        s += Math.sign(rise);
        scratch[count++] = rise / (x[k] - x[j]);
      }
    const slope = medianOf(scratch, count);
    result[at] = slope;
    result[at + 1] = select(scratch, count, steps);
    result[at + 2] = select(scratch, count, count - 1 - steps);
    for (let t = 0; t < tests; t++) scratch[t] = own[t] - slope * x[t];
    result[at + 3] = medianOf(scratch, tests);
    result[at + 4] = s;
    result[at + 5] = upperTail(-s);
  };

  const bestStep = () => {
    let total = 0;
    for (let t = 0; t < tests; t++) total += own[t];
    let best = 0;
    let sum = 0;
    for (let k = 1; k < tests; k++) {
      sum += own[k - 1];
      const fall = sum / k - (total - sum) / (tests - k);
      const gain = ((k * (tests - k)) / tests) * fall * fall;
      if (fall > 0 && gain > best) best = gain;
    }
    return best;
  };

  return (x, pressures, limitRatio) => {
    for (let cell = 0; cell < size; cell++) ln[cell] = Math.log(pressures[cell]);
    polish();
    against(levels, contrasts);
    against(none, plain);
    let meanX = 0;
    for (let t = 0; t < tests; t++) meanX += x[t] / tests;
    let sxx = 0;
    for (let t = 0; t < tests; t++) sxx += (x[t] - meanX) ** 2;
    const scatter = pooled(x, meanX, sxx, contrasts);
    const plainScatter = pooled(x, meanX, sxx, plain);
    const { stepDf, stepVariance } = lastSteps();
    const quantile = tQuantile(0.9, df);
    const limit = Math.log(limitRatio);
    const last = x[tests - 1];
    for (let i = 0; i < cylinders; i++) {
      const at = i * figures.length;
      for (let t = 0; t < tests; t++) own[t] = Math.round(contrasts[t * cylinders + i] * 1e9) / 1e9;
      robust(x, at);
      for (let t = 0; t < tests; t++) own[t] = contrasts[t * cylinders + i];
      fit(x, meanX, sxx, contrasts, i);
      result[at + 6] = tCdf((line.slope * Math.sqrt(sxx)) / Math.sqrt(scatter), df);
      for (let t = 0; t < 3; t++) scratch[t] = own[t];
      const drop = medianOf(scratch, 3) - Math.max(own[tests - 1], own[tests - 2]);
      result[at + 7] = drop / Math.sqrt(stepVariance * (0.68 + varianceOfMedian(3)));
      result[at + 8] = tCdf(-result[at + 7], stepDf);
      result[at + 9] = line.slope > 0 ? 0 : (line.slope * line.slope * sxx) / stepVariance;
      result[at + 10] = bestStep() / stepVariance;
      fit(x, meanX, sxx, plain, i);
      // Fieller: (m + b d)^2 = q^2 (s^2/T + d^2 s^2/Sxx), d from the middle of x
      const above = line.meanY - limit;
      const a = line.slope ** 2 - (quantile ** 2 * plainScatter) / sxx;
      const b = above * line.slope;
      const c = above ** 2 - (quantile ** 2 * plainScatter) / tests;
      const root = Math.sqrt(b * b - a * c);
      // what is crossed already is crossed at the last test
      result[at + 11] = Math.max(last, meanX - above / line.slope);
      result[at + 12] = Math.max(last, meanX + (-b - root) / a);
      result[at + 13] = Math.max(last, meanX + (-b + root) / a);
      // a slope believed beforehand to be within .04 a year of none
      const shrunk = 1 / (1 + plainScatter / sxx / 0.04 ** 2);
      for (let ahead = 1; ahead <= 3; ahead++) {
        const d = last + ahead - meanX;
        const error = Math.sqrt(plainScatter / tests + (d * d * shrunk * plainScatter) / sxx);
        result[at + 13 + ahead] = tCdf((above + shrunk * line.slope * d) / error, df);
      }
    }
    return result;
  };
};
