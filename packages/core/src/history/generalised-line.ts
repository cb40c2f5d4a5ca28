// A straight line through values that depend on each other.

import { at } from "./at.ts";

export interface GeneralisedLine {
  readonly slope: number;
  /** Standard error as the covariance has it. */
  readonly standardError: number;
  /** Q = residual' V^-1 residual. */
  readonly misfit: number;
  /** The place B/A at which level and slope do not depend on each other, the level there, and its standard error. */
  readonly meanX: number;
  readonly level: number;
  readonly levelError: number;
}

/** Generalised least squares: with A = 1'V^-1 1, B = 1'V^-1 x, C = x'V^-1 x, D = A C - B^2,
 *  b = (A x'V^-1 y - B 1'V^-1 y) / D, se(b) = sqrt(A/D).
 *  @param covariance - V, row after row, positive definite
 *  @returns undefined where all x are equal  @source handbook/statistics.md B, L.7 */
export const generalisedLine = (
  x: readonly number[],
  y: readonly number[],
  covariance: Float64Array,
): GeneralisedLine | undefined => {
  const n = x.length;
  if (x.every((place) => place === x[0])) return undefined;
  const ones = new Array<number>(n).fill(1);
  const root = cholesky(covariance, n);
  const [u, v, w] = [halfSolved(root, ones), halfSolved(root, x), halfSolved(root, y)];
  const [a, b, c] = [dot(u, u), dot(u, v), dot(v, v)];
  const d = a * c - b * b;
  const slope = (a * dot(v, w) - b * dot(u, w)) / d;
  const level = (dot(u, w) - slope * b) / a;
  const rest = w.map((value, i) => value - level * at(u, i) - slope * at(v, i));
  return {
    slope,
    standardError: Math.sqrt(a / d),
    misfit: dot(rest, rest),
    meanX: b / a,
    level: dot(u, w) / a,
    levelError: Math.sqrt(1 / a),
  };
};

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0);

/** Lower triangle L with V = L L'. */
const cholesky = (matrix: Float64Array, n: number): Float64Array => {
  const root = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1)
    for (let j = 0; j <= i; j += 1) {
      let rest = at(matrix, i * n + j);
      for (let k = 0; k < j; k += 1) rest -= at(root, i * n + k) * at(root, j * n + k);
      root[i * n + j] = i === j ? Math.sqrt(rest) : rest / at(root, j * n + j);
    }
  return root;
};

/** L^-1 y. */
const halfSolved = (root: Float64Array, y: readonly number[]): number[] => {
  const n = y.length;
  const solved: number[] = [];
  for (let i = 0; i < n; i += 1) {
    let rest = at(y, i);
    for (let k = 0; k < i; k += 1) rest -= at(root, i * n + k) * at(solved, k);
    solved.push(rest / at(root, i * n + i));
  }
  return solved;
};
