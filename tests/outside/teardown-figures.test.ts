// Figures, oversizes, volumes and flatness against tests/outside/teardown_cases.py. Computed, not published; the cases that
// begin with Q are those of the handbook, computed there as well.

import { angle, area, length, sweptVolume, toSi, volume } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import {
  boreFigures,
  chamberAfterWork,
  chooseOversize,
  chooseUndersize,
  compressionRatio,
  diameterChange,
  faceFlatness,
  gapInBore,
  ovalitySeen,
  ratioWarnings,
  threadClearance,
  threadReadsLow,
  threadSection,
  threadUncertainty,
  warmPistonError,
} from "../../packages/core/src/teardown/figures/index.ts";
import { inMm, mm, near, teardownCases } from "./teardown-cases.ts";

const { bores, ovals, oversizes, undersizes, works, threads, singles, faces } = teardownCases;
const ml = (cubicMetres: number): number => cubicMetres * 1e6;

test.each(bores)("$id: taper, out-of-round, cylindricity, range and wear", ({ given, expected }) => {
  const readings = given.levels.flatMap((along, level) =>
    given.directions.map((across, direction) => ({
      along,
      across,
      diameter: mm(given.diameters[level]?.[direction] ?? NaN),
    })),
  );
  const found = boreFigures(readings, mm(given.original));
  near(inMm(found.taper?.value ?? NaN), expected.taper);
  near(inMm(found.outOfRound?.value ?? NaN), expected.outOfRound);
  near(inMm(found.cylindricity ?? NaN), expected.cylindricity);
  near(inMm(found.range ?? NaN), expected.range);
  near(inMm(found.wear ?? NaN), expected.wear);
});

test.each(ovals)("$id: an oval seen by a gauge that stands off its axes", ({ given, expected }) => {
  // the ellipse is not quite e·cos 2φ: the difference is of the order e²/D
  near(inMm(ovalitySeen(mm(given.ovality), angle(given.degrees))), expected.seen, 5e-5);
});

test.each(oversizes)("$id: the smallest oversize that cleans up", ({ given, expected }) => {
  const { offset } = given;
  const found = chooseOversize({
    cylinders: given.largest.map((largest, i) => ({
      label: String(i + 1),
      largest: mm(largest),
      score: mm(given.scores[i] ?? 0),
      uncertainty: mm(given.guard / 1.645),
    })),
    original: mm(given.original),
    nominal: mm(given.nominal),
    offered: given.offered.map(mm),
    offset: typeof offset === "number" ? { known: mm(offset) } : offset,
    honeStock: mm(given.hone),
  });
  expect(found.offset).toBe(typeof offset === "number" ? "known" : offset);
  found.cylinders.forEach(({ needed }, i) => {
    // the other program samples the wall every tenth of a degree
    near(inMm(needed), expected.needed[i] ?? NaN, 1e-5);
  });
  const sizes = found.cylinders.map(({ size }) => size ?? null);
  expect(sizes.map((size) => (size === null ? null : inMm(size).toFixed(6)))).toEqual(
    expected.own.map((size) => (size === null ? null : size.toFixed(6))),
  );
  for (const name of ["size", "finished", "boreTo"] as const) {
    const wanted = expected[name];
    if (wanted === null) expect(found[name]).toBeUndefined();
    else near(inMm(found[name] ?? NaN), wanted);
  }
});

test.each(undersizes)("$id: the smallest undersize that cleans up", ({ given, expected }) => {
  const found = chooseUndersize({
    part: "pin",
    journals: given.smallest.map((smallest, i) => ({ label: String(i), smallest: mm(smallest) })),
    low: mm(given.low),
    high: mm(given.high),
    offered: given.offered.map(mm),
    unit: "mm",
    stock: mm(given.stock),
    bend: mm(given.bend),
  });
  near(inMm(found?.needed ?? NaN), expected.needed);
  expect(found?.decidedBy).toBe(String(expected.decidedBy));
  for (const name of ["size", "low", "high"] as const) {
    const wanted = expected[name];
    if (wanted === null) expect(found?.[name]).toBeUndefined();
    else near(inMm(found?.[name] ?? NaN), wanted);
  }
});

test.each(works)("$id: volumes and ratio after the work", ({ given, expected }) => {
  const stroke = mm(given.stroke);
  const swept = sweptVolume({ bore: mm(given.bore), stroke });
  near(ml(swept), expected.swept_ml, 1e-6 * expected.swept_ml);
  const clearance = volume(swept / (given.ratio - 1));
  const work = {
    bore: { before: mm(given.bore), after: mm(given.newBore) },
    deck: mm(given.deck),
    headSkim: { off: mm(given.skim), opening: area(toSi(given.opening, "mm2")) },
    deckSkim: mm(given.deckSkim),
    gasket: { bore: mm(given.gasketBore), before: mm(given.gasket), after: mm(given.newGasket) },
    crownChange: toSi(given.crown, "ml"),
  };
  const after = chamberAfterWork(clearance, work);
  near(ml(clearance), expected.clearance_ml, 1e-6 * expected.clearance_ml);
  near(ml(after), expected.after_ml, 1e-6 * expected.after_ml);
  const afterSwept = sweptVolume({ bore: mm(given.newBore), stroke });
  near(ml(afterSwept), expected.afterSwept_ml, 1e-6 * expected.afterSwept_ml);
  const ratio = compressionRatio(afterSwept, after);
  near(ratio, expected.ratio, 1e-6);
  expect(ratioWarnings({ before: given.ratio, after: ratio }, work)).toEqual(expected.warnings);
});

test.each(threads)("$id: clearance under gauging thread and its uncertainty", ({ given, expected }) => {
  const section = threadSection({ round: mm(given.diameter) });
  near(inMm(threadClearance(section, mm(given.width))), expected.clearance);
  const uncertainty = threadUncertainty(
    { value: mm(given.diameter), uncertainty: mm(given.uDiameter) },
    { value: mm(given.width), uncertainty: mm(given.uWidth) },
  );
  near(inMm(uncertainty), expected.u, 1e-6);
});

test("a ring in a wider bore, a bore by its ring, a strip off the crown, a warm piston", () => {
  const one = (id: string) => {
    const found = singles.find((single) => single.id === id);
    return { given: found?.given ?? {}, expected: found?.expected ?? {} };
  };
  const gap = one("Q8-gap");
  const { from = NaN, to = NaN } = gap.given;
  near(inMm(gapInBore(mm(gap.given.gap ?? NaN), mm(from), mm(to))), gap.expected.gap ?? NaN);
  const taper = one("Q8-taper");
  near(inMm(diameterChange(mm(taper.given.gapChange ?? NaN))), taper.expected.diameterChange ?? NaN);
  const crown = one("crown");
  near(
    threadReadsLow(mm(crown.given.diameter ?? NaN), mm(crown.given.off ?? NaN)),
    crown.expected.low ?? NaN,
  );
  const warm = one("warm");
  const error = warmPistonError(mm(warm.given.diameter ?? NaN), warm.given.above ?? NaN);
  near(inMm(error), warm.expected.error ?? NaN);
});

test.each(faces)("$id: flatness over all and under a chord of 150 mm", ({ given, expected }) => {
  const found = faceFlatness(
    given.lines.map(({ name, at, gaps }) => ({
      name,
      points: at.map((place, i) => ({ at: mm(place), gap: mm(gaps[i] ?? NaN) })),
    })),
  );
  near(inMm(found.overall?.gap ?? NaN), expected.overall);
  near(inMm(found.skim ?? length(NaN)), expected.skim);
  if (expected.local === null) expect(found.local).toBeUndefined();
  else near(inMm(found.local?.gap ?? NaN), expected.local);
});
