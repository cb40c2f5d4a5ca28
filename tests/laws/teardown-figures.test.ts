// What holds for every teardown: figures scale with the unit, signs follow the part, chances follow the limits.

import { type Length, length, toSi } from "@sealtrend/core";
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  allConform,
  bothSides,
  clearanceUncertainty,
  differenceUncertainty,
  insideByFeeler,
  instrumentFor,
  limitVerdict,
  probabilityOf,
  readingUncertainty,
} from "../../packages/core/src/teardown/conformity/index.ts";
import {
  boreFigures,
  chooseOversize,
  faceFlatness,
  journalFigures,
  neededDiameter,
  type RoundReading,
} from "../../packages/core/src/teardown/figures/index.ts";

const mm = (millimetres: number): Length => length(toSi(millimetres, "mm"));
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const sixDiameters = fc.array(within(80, 81), { minLength: 6, maxLength: 6 });

const levels = ["top", "middle", "bottom"];
const grid = (diameters: readonly number[], names = levels): readonly RoundReading[] =>
  diameters.map((diameter, i) => ({
    along: names[Math.floor(i / 2)] ?? "",
    across: i % 2 === 0 ? "thrust" : "axial",
    diameter: mm(diameter),
  }));
const close = (found: number, expected: number, by = 1e-9): void => {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(by * Math.max(1e-3, Math.abs(expected)));
};

test("all figures of a bore scale with its sizes", () => {
  fc.assert(
    fc.property(sixDiameters, within(0.5, 30), (diameters, scale) => {
      const one = boreFigures(grid(diameters), mm(79));
      const other = boreFigures(grid(diameters.map((d) => d * scale)), mm(79 * scale));
      close(other.taper?.value ?? NaN, scale * (one.taper?.value ?? NaN), 1e-8);
      close(other.cylindricity ?? NaN, scale * (one.cylindricity ?? NaN), 1e-8);
      close(other.range ?? NaN, scale * (one.range ?? NaN), 1e-8);
      close(other.wear ?? NaN, scale * (one.wear ?? NaN), 1e-8);
    }),
  );
});

test("a bore turned upside down has the opposite taper and the same of all else", () => {
  fc.assert(
    fc.property(sixDiameters, (diameters) => {
      const one = boreFigures(grid(diameters), mm(79));
      const turned = boreFigures(grid(diameters, ["bottom", "middle", "top"]), mm(79));
      close(turned.taper?.value ?? NaN, -1 * (one.taper?.value ?? NaN));
      expect(turned.cylindricity).toBe(one.cylindricity);
      expect(turned.range).toBe(one.range);
      expect(turned.wear).toBe(one.wear);
      close(Math.abs(turned.outOfRound?.value ?? NaN), Math.abs(one.outOfRound?.value ?? NaN));
    }),
  );
});

test("a crank seen from its other end has the opposite taper of every journal", () => {
  const four = fc.array(within(57, 58), { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(four, (diameters) => {
      const journal = (names: readonly string[]) =>
        journalFigures(
          diameters.map((diameter, i) => ({
            along: names[Math.floor(i / 2)] ?? "",
            across: i % 2 === 0 ? "0" : "90",
            diameter: mm(diameter),
          })),
        );
      const [one, other] = [journal(["front", "rear"]), journal(["rear", "front"])];
      close(other.taper?.value ?? NaN, -1 * (one.taper?.value ?? NaN));
      expect(other.smallest?.diameter).toBe(one.smallest?.diameter);
    }),
  );
});

test("more wear or a deeper score never asks for a smaller oversize", () => {
  const wear = within(0, 0.5);
  const offsets = fc.constantFrom("worst" as const, "none" as const, { known: mm(0.03) });
  fc.assert(
    fc.property(wear, wear, within(0, 0.2), offsets, (first, more, score, offset) => {
      const needed = (worn: number, deep: number): number =>
        neededDiameter({ largest: mm(86.5 + worn), score: mm(deep) }, mm(86.5), {
          offset,
          honeStock: mm(0.02),
        });
      expect(needed(first + more, score)).toBeGreaterThanOrEqual(needed(first, score));
      expect(needed(first, score)).toBeGreaterThanOrEqual(needed(first, 0));
      const chosen = (worn: number) =>
        chooseOversize({
          cylinders: [{ label: "1", largest: mm(86.5 + worn) }],
          original: mm(86.5),
          offered: [0.25, 0.5, 0.75, 1].map(mm),
          offset,
          honeStock: mm(0.02),
        });
      const [size, larger] = [chosen(first).size, chosen(first + more).size];
      // no size at all is beyond the largest
      expect(larger ?? Infinity).toBeGreaterThanOrEqual(size ?? Infinity);
      expect(chosen(first).finished ?? Infinity).toBeGreaterThanOrEqual(mm(86.5 + first));
    }),
  );
});

test("a chance lies in 0 … 1 and rises with a wider limit", () => {
  fc.assert(
    fc.property(
      within(-0.2, 0.2),
      within(0.0005, 0.05),
      within(-0.2, 0.2),
      within(0, 0.2),
      (y, u, high, wider) => {
        const chance = (most: number, low?: number): number =>
          probabilityOf(
            { value: mm(y), uncertainty: mm(u) },
            { high: mm(most), ...(low === undefined ? {} : { low: mm(low) }) },
          );
        for (const p of [chance(high), chance(high, high - wider)]) {
          expect(p).toBeGreaterThanOrEqual(0);
          expect(p).toBeLessThanOrEqual(1);
        }
        expect(chance(high + wider)).toBeGreaterThanOrEqual(chance(high) - 1e-15);
        expect(chance(high, high - wider)).toBeLessThanOrEqual(chance(high) + 1e-15);
      },
    ),
  );
});

test("a signed difference conforms as well one way as the other", () => {
  fc.assert(
    fc.property(within(-0.2, 0.2), within(0.001, 0.05), within(0.001, 0.2), (value, u, most) => {
      const chance = (sign: number): number =>
        probabilityOf({ value: mm(sign * value), uncertainty: mm(u) }, bothSides(mm(most)));
      close(chance(1), chance(-1));
    }),
  );
});

test("a gap between two leaves: the chance rises with the limit, and without blur it is the share of the interval", () => {
  fc.assert(
    fc.property(
      within(0, 1),
      within(0.01, 0.1),
      within(-0.1, 0.2),
      within(0, 0.1),
      (goes, width, from, wider) => {
        const leaves = { low: mm(goes), high: mm(goes + width) };
        const chance = (limit: number, blur?: number): number =>
          insideByFeeler(leaves, { high: mm(limit) }, blur === undefined ? undefined : mm(blur));
        expect(chance(goes + from + wider)).toBeGreaterThanOrEqual(chance(goes + from) - 1e-12);
        const share = Math.min(1, Math.max(0, from / width));
        expect(Math.abs(chance(goes + from, 0) - share)).toBeLessThan(1e-9);
        // the blur reaches 1e-5 mm at most here, and is felt over no more of the interval
        expect(Math.abs(chance(goes + from, 1e-6) - share)).toBeLessThan(1e-5 / width);
      },
    ),
  );
});

test("of many readings the bounds stand in order and one more never helps", () => {
  fc.assert(
    fc.property(fc.array(within(0, 1), { minLength: 1, maxLength: 20 }), within(0, 1), (chances, one) => {
      const [some, more] = [allConform(chances), allConform([...chances, one])];
      expect(some.atLeast).toBeLessThanOrEqual(some.atMost);
      expect(more.atLeast).toBeLessThanOrEqual(some.atLeast);
      expect(more.atMost).toBeLessThanOrEqual(some.atMost);
    }),
  );
});

test("more readings never make a figure less certain, and a difference never less certain than what it is made of alone", () => {
  const codes = fc.constantFrom(
    "micrometer",
    "bore-gauge",
    "telescopic",
    "caliper",
    "thread",
    "dial",
    "feeler",
  );
  fc.assert(
    fc.property(codes, fc.integer({ min: 1, max: 9 }), within(0.001, 0.05), (name, readings, resolution) => {
      const instrument = instrumentFor({
        part: "bore",
        quantity: "diameter",
        instrument: name,
        resolution: mm(resolution),
        unit: "mm",
      });
      const taken = { instrument, readings };
      const more = { instrument, readings: readings + 1 };
      expect(readingUncertainty(more)).toBeLessThanOrEqual(readingUncertainty(taken));
      expect(differenceUncertainty(more, more)).toBeLessThanOrEqual(differenceUncertainty(taken, taken));
      const shaft = {
        ...taken,
        instrument: instrumentFor({ part: "pin", quantity: "diameter", unit: "mm" }),
      };
      const same = clearanceUncertainty({ hole: taken, shaft });
      expect(same).toBeLessThanOrEqual(clearanceUncertainty({ hole: taken, shaft, set: "another" }) + 1e-12);
    }),
  );
});

test("what is proposed to settle a figure settles it, if it reads the same again", () => {
  const kinds = fc.constantFrom("reading" as const, "difference" as const, "clearance" as const);
  fc.assert(
    fc.property(within(-0.02, 0.02), within(0.003, 0.03), kinds, (off, u, kind) => {
      const limits = { high: mm(0.1) };
      const figure = { value: mm(0.1 + off), uncertainty: mm(u) };
      const of = { part: "rod bearing", quantity: "clearance", kind, unit: "mm" } as const;
      const { verdict, settlement } = limitVerdict(figure, { kind: "wear", limits }, of);
      expect(settlement === undefined).toBe(verdict !== "too-close-to-tell");
      if (settlement === undefined) return;
      expect(settlement.needed).toBeLessThan(figure.uncertainty);
      if (settlement.needed > 0) {
        const sure = { value: figure.value, uncertainty: length(settlement.needed * 0.999) };
        expect(limitVerdict(sure, { kind: "wear", limits }, of).verdict).toBe(off < 0 ? "inside" : "outside");
      }
    }),
  );
});

test("flatness is the same along an edge that is read from its other end", () => {
  const gaps = fc.array(within(0, 0.1), { minLength: 3, maxLength: 9 });
  fc.assert(
    fc.property(gaps, within(20, 80), (depths, step) => {
      const face = (list: readonly number[]) =>
        faceFlatness([{ name: "long1", points: list.map((gap, i) => ({ at: mm(i * step), gap: mm(gap) })) }]);
      const [one, turned] = [face(depths), face([...depths].reverse())];
      expect(turned.overall?.gap).toBe(one.overall?.gap);
      if (one.local === undefined) expect(turned.local).toBeUndefined();
      else close(turned.local?.gap ?? NaN, one.local.gap, 1e-6);
    }),
  );
});
