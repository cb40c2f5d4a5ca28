import { expect, test } from "vitest";
import {
  chiSquareQuantile,
  fisherUpperTail,
  normalCdf,
  normalQuantile,
  rangeUpperTail,
  studentCdf,
  studentQuantile,
} from "../../../packages/core/src/statistics/index.ts";

test("Student's distribution with one and two degrees of freedom has its closed forms", () => {
  for (const t of [-1e6, -300, -12, -1.5, -1e-3, 0.2, 3]) {
    // atan(-1/t) form below zero keeps the digits of the tail
    const cauchy = t < 0 ? Math.atan(-1 / t) / Math.PI : 0.5 + Math.atan(t) / Math.PI;
    expect(Math.abs(studentCdf(t, 1) / cauchy - 1)).toBeLessThan(1e-13);
    // df 2: F = 1/2 + t/(2 sqrt(2 + t^2)); below zero 1/(r (r - t)) with r = sqrt(2 + t^2)
    const r = Math.sqrt(2 + t * t);
    expect(Math.abs(studentCdf(t, 2) / (1 / (r * (r - t))) - 1)).toBeLessThan(1e-13);
  }
});

test("with ever more degrees of freedom Student's distribution becomes the normal one", () => {
  expect(studentCdf(-2, Infinity)).toBe(normalCdf(-2));
  expect(studentQuantile(0.1, Infinity)).toBe(normalQuantile(0.1));
  expect(studentCdf(-2, 1e6)).toBeCloseTo(normalCdf(-2), 6);
  expect(studentCdf(-2, 1e6)).toBeGreaterThan(normalCdf(-2));
});

test("chi-square with two degrees of freedom has its closed form, -2 ln(1 - p)", () => {
  for (const p of [1e-6, 0.01, 0.3, 0.5, 0.9, 0.975, 0.999])
    expect(Math.abs(chiSquareQuantile(p, 2) / (-2 * Math.log1p(-p)) - 1)).toBeLessThan(1e-12);
});

test("chi-square with one degree of freedom is the square of a normal value", () => {
  for (const p of [0.01, 0.5, 0.9, 0.99])
    expect(Math.abs(chiSquareQuantile(p, 1) / normalQuantile((1 + p) / 2) ** 2 - 1)).toBeLessThan(1e-12);
});

test("F with one upper degree of freedom is the square of Student's t", () => {
  for (const t of [0.01, 0.7, 2, 12])
    for (const df of [1, 4, 8.5, 60])
      expect(Math.abs(fisherUpperTail(t * t, 1, df) / (2 * studentCdf(-t, df)) - 1)).toBeLessThan(1e-11);
});

test("F with two upper degrees of freedom has its closed form, (1 + 2 f/df)^(-df/2)", () => {
  for (const f of [1e-6, 0.3, 1, 5, 400])
    for (const df of [1, 3, 12, 50])
      expect(Math.abs(fisherUpperTail(f, 2, df) / (1 + (2 * f) / df) ** (-df / 2) - 1)).toBeLessThan(1e-11);
});

test("F has no lower end but 0, and what is no F is refused", () => {
  expect(fisherUpperTail(0, 3, 4)).toBe(1);
  expect(fisherUpperTail(Infinity, 3, 4)).toBe(0);
  for (const [f, upper, lower] of [
    [-1, 3, 4],
    [NaN, 3, 4],
    [1, 0, 4],
    [1, 3, Infinity],
  ] as const)
    expect(() => fisherUpperTail(f, upper, lower)).toThrow(RangeError);
});

test("the middle of each distribution is 0", () => {
  expect(normalCdf(0)).toBe(0.5);
  expect(normalQuantile(0.5)).toBeCloseTo(0, 15);
  expect(studentCdf(0, 3)).toBe(0.5);
  expect(studentQuantile(0.5, 3)).toBe(0);
});

test("far beyond all readings the tails are 0 and 1, never NaN", () => {
  expect(normalCdf(-Infinity)).toBe(0);
  expect(normalCdf(Infinity)).toBe(1);
  expect(studentCdf(-Infinity, 3)).toBe(0);
  expect(studentCdf(Infinity, 3)).toBe(1);
});

test("a probability of 0 or 1, degrees of freedom of 0 and what is no number are refused", () => {
  for (const p of [0, 1, -0.1, NaN]) {
    expect(() => normalQuantile(p)).toThrow(RangeError);
    expect(() => studentQuantile(p, 3)).toThrow(RangeError);
    expect(() => chiSquareQuantile(p, 3)).toThrow(RangeError);
  }
  expect(() => chiSquareQuantile(0.5, 0)).toThrow(RangeError);
  expect(() => chiSquareQuantile(0.5, Infinity)).toThrow(RangeError);
  expect(() => studentCdf(1, 0)).toThrow(RangeError);
  expect(() => studentCdf(NaN, 3)).toThrow(RangeError);
  expect(() => normalCdf(NaN)).toThrow(RangeError);
});

test("two normal values lie q apart or more with the probability 2 Phi(-q / sqrt2)", () => {
  for (const q of [0, 0.3, 1, 2.771808, 6, 12])
    expect(Math.abs(rangeUpperTail(q, 2) / (2 * normalCdf(-q / Math.SQRT2)) - 1)).toBeLessThan(1e-11);
  expect(() => rangeUpperTail(-1, 3)).toThrow(RangeError);
  expect(() => rangeUpperTail(1, 1)).toThrow(RangeError);
});
