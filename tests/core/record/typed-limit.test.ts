// One limit as a person sets it. Figures invented; the units are exact by definition.

import {
  type LimitPlace,
  limitExample,
  limitPath,
  limitPathMeant,
  limitPlace,
  limitQuantitiesOf,
  limitToBegin,
  partNames,
  readTypedLimit,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const cylinders = ["1", "2"];

test.each([
  ["limits.bore.taper.wear", { part: "bore", quantity: "taper", kind: "wear" }],
  ["limits.rod-bearing.clearance.new", { part: "rod bearing", quantity: "clearance", kind: "new" }],
  ["limits.rod bearing.oil clearance.new", { part: "rod bearing", quantity: "clearance", kind: "new" }],
  ["limits.ring.1.end-gap.wear", { part: "ring", at: "1", quantity: "end gap", kind: "wear" }],
  ["limits.Ring.Oil.End_Gap.WEAR", { part: "ring", at: "oil", quantity: "end gap", kind: "wear" }],
  ["limits.guide.in.clearance.wear", { part: "guide", label: "in", quantity: "clearance", kind: "wear" }],
  ["limits.stem.2ex.diameter.wear", { part: "stem", label: "2ex", quantity: "diameter", kind: "wear" }],
  ["limits.main.3.diameter.new", { part: "main", label: "3", quantity: "diameter", kind: "new" }],
  ["limits.bore.out-of-round.wear", { part: "bore", quantity: "out-of-round", kind: "wear" }],
  ["limits.bore.wear.new", { part: "bore", quantity: "wear", kind: "new" }],
  ["limits.housing.rod.bore.new", { part: "housing", at: "rod", quantity: "bore", kind: "new" }],
])("%s names one limit", (path, place) => {
  expect(limitPlace(path, cylinders)).toEqual(place);
});

test.each([
  "limits.bore.taper",
  "limits.bore.wear.9.taper",
  "limits.bore.9.taper.wear",
  "limits.crank.2.end-play.wear",
  "limits.compression.minimum",
  "bore.taper.wear",
])("%s names none", (path) => {
  expect(limitPlace(path, cylinders)).toBeUndefined();
});

test("every limit that may be given can be typed, and is read as the same", () => {
  const places = partNames.flatMap((part) =>
    limitQuantitiesOf(part).flatMap(({ name }) =>
      (["new", "wear"] as const).map((kind): LimitPlace => ({ part, quantity: name, kind })),
    ),
  );
  expect(places.length).toBeGreaterThan(60);
  for (const place of places) {
    expect(limitPlace(limitPath(place), cylinders)).toEqual(place);
    for (const unit of ["mm", "um", "in", "thou"] as const)
      expect(readTypedLimit(limitExample(place, unit))).toMatchObject({ unit });
  }
});

test.each([
  ["0.0010 to 0.0025in, manual p. 62", { low: "0.0010", high: "0.0025", unit: "in", source: "manual p. 62" }],
  ["0.03..0.07 mm", { low: "0.03", high: "0.07", unit: "mm" }],
  ["0.03mm to 0,070mm", { low: "0.03", high: "0.070", unit: "mm" }],
  ["up to 0.10mm", { high: "0.10", unit: "mm" }],
  ["..0.10mm", { high: "0.10", unit: "mm" }],
  ["max .004 in", { high: "0.004", unit: "in" }],
  ["from 0.8mm, card, line 3", { low: "0.8", unit: "mm", source: "card, line 3" }],
  ["1.5 to 2.5 thou", { low: "1.5", high: "2.5", unit: "thou" }],
])("%s is a limit", (text, limit) => {
  expect(readTypedLimit(text)).toEqual(limit);
});

test.each(["0.10mm", "up to 0.10", "up to 0.10bar", "up to 1,234mm", "0.1 mm to 0.2 in", "up to O.1mm", ""])(
  "%j is none",
  (text) => {
    expect(readTypedLimit(text)).toBeUndefined();
  },
);

test("a path that is nearly one is told what it may have meant", () => {
  expect(limitPathMeant("limits.bore.tapr.wear")?.meant).toEqual({
    part: "bore",
    quantity: "taper",
    kind: "wear",
  });
  expect(limitPathMeant("limits.bore.ovality")?.meant).toMatchObject({ quantity: "out-of-round" });
  expect(limitPathMeant("limits.compression.minimun")).toBeUndefined();
});

test("of figures without a limit the first that is no size is the one to begin with", () => {
  const [taper, size] = [
    { part: "pin", quantity: "taper" },
    { part: "pin", quantity: "diameter" },
  ] as const;
  expect(limitToBegin([size, taper])).toEqual({ ...taper, kind: "wear" });
  expect(limitToBegin([size])).toEqual({ ...size, kind: "new" });
  expect(limitToBegin([{ part: "rod bearing", quantity: "thread clearance" }])?.quantity).toBe("clearance");
  expect(limitToBegin([])).toBeUndefined();
});
