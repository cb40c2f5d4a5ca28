// What the instruments are taken for, and what their readings share.

import { type Length, length, toSi } from "@sealtrend/core";
import { describe, expect, test } from "vitest";
import {
  clearanceUncertainty,
  differenceUncertainty,
  feelerUncertainty,
  insideByFeeler,
  instrumentFor,
  instrumentNamed,
  instrumentText,
  probabilityOf,
  readingUncertainty,
  type Instrument,
  type InstrumentQuestion,
} from "../../../packages/core/src/teardown/conformity/index.ts";

const mm = (millimetres: number): Length => length(toSi(millimetres, "mm"));
const inch = (inches: number): Length => length(toSi(inches, "in"));
const used = (question: Partial<InstrumentQuestion>): Instrument =>
  instrumentFor({ part: "bore", quantity: "diameter", unit: "mm", ...question });
const microns = (metres: number): number => Number((metres * 1e6).toFixed(2));

describe("instruments", () => {
  test.each([
    ["bore-gauge", "bore-gauge"],
    ["my old Dial Bore Gauge", "bore-gauge"],
    ["inside-micrometer", "inside micrometer"],
    ["telescopic-gauge", "telescopic"],
    ["dial-indicator", "dial"],
    ["dial caliper", "caliper"],
    ["thread green", "thread"],
    ["small-hole-gauge", "small-hole gauge"],
    ["feelers", "feeler"],
    ["ruler", undefined],
    ["micrometers", undefined],
  ])("%s is %s", (name, code) => {
    expect(instrumentNamed(name)?.code).toBe(code);
  });

  test("nothing named: the coarsest sensible instrument for the part, and it is said", () => {
    const named = (part: InstrumentQuestion["part"], quantity: string) => used({ part, quantity });
    expect(named("bore", "diameter")).toMatchObject({ assumed: "instrument", kind: { code: "telescopic" } });
    expect(named("pin", "diameter").kind.code).toBe("micrometer");
    expect(named("rod bearing", "thread clearance").kind.code).toBe("thread");
    expect(named("rod bearing", "bore").kind.code).toBe("telescopic");
    expect(named("guide", "bore").kind.code).toBe("small-hole gauge");
    expect(named("head", "gap").kind.code).toBe("feeler");
    expect(instrumentText(named("pin", "diameter"), "mm", 1)).toBe(
      "instrument not named, taken as micrometer 0.01 mm",
    );
  });

  test("a straightedge that is named is felt as blur, of one that is not nothing is known", () => {
    const face = used({ part: "head", quantity: "gap", instrument: "straightedge", size: mm(0.05) });
    // 0.0002 in a foot over 500 mm: 8.33 µm, as a rectangle 4.81
    expect(microns(face.common)).toBe(4.81);
    const between = { low: mm(0.05), high: mm(0.06) };
    const of = (common: number): number =>
      probabilityOf(
        { value: mm(0.055), uncertainty: feelerUncertainty(between, mm(common * 1000)), between },
        { high: mm(0.05) },
      );
    const blurred = insideByFeeler(between, { high: mm(0.05) }, mm(Math.hypot(0.006, face.common * 1000)));
    expect(of(face.common)).toBeCloseTo(blurred, 9);
    // computed (handbook teardown.md 3.4, row 8): leaf and feel alone
    const bare = used({ part: "head", quantity: "gap", instrument: "feeler", size: mm(0.05) });
    expect(of(bare.common)).toBeCloseTo(0.2275, 4);
  });

  test("the scale of a micrometer grows with its size", () => {
    const scale = (size: number): number =>
      microns(used({ part: "main", instrument: "micrometer", size: mm(size) }).common * Math.sqrt(3));
    expect([20, 50, 50.1, 100, 120, 150, 160].map(scale)).toEqual([4, 4, 5, 5, 6, 6, 7]);
  });

  test("what is told: instrument, division, readings, and what was assumed", () => {
    const gauge = used({ instrument: "bore-gauge", resolution: mm(0.01) });
    expect(instrumentText(gauge, "mm", 2)).toBe("bore gauge 0.01 mm, 2 readings");
    const bare = used({ instrument: "bore-gauge", unit: "in" });
    expect(bare.resolution).toBe(inch(0.0005));
    expect(instrumentText(bare, "in", 1)).toBe("bore gauge, 0.0005 in assumed");
    expect(instrumentText(used({ instrument: "thread" }), "in", 1)).toBe("gauging thread");
  });

  test("an uncertainty that the owner states takes the place of the table's and is not bettered by repeats", () => {
    const stated = used({ instrument: "bore-gauge", uncertainty: mm(0.004) });
    const taken = { instrument: stated, readings: 4 };
    expect(readingUncertainty(taken)).toBeCloseTo(0.004e-3, 12);
    expect(microns(differenceUncertainty(taken, taken))).toBe(5.66);
    expect(instrumentText(stated, "mm", 1)).toBe("bore gauge, uncertainty as you stated it");
  });

  test("a difference of two instruments keeps both scales, a clearance of two micrometers too", () => {
    const gauge = { instrument: used({ instrument: "bore-gauge", resolution: mm(0.002) }), readings: 1 };
    const mic = { instrument: used({ instrument: "micrometer", resolution: mm(0.001) }), readings: 1 };
    const both = Math.hypot(readingUncertainty(gauge), readingUncertainty(mic));
    expect(differenceUncertainty(gauge, mic)).toBeCloseTo(both, 12);
    expect(clearanceUncertainty({ hole: gauge, shaft: mic, set: "another" })).toBeCloseTo(both, 12);
    expect(microns(clearanceUncertainty({ hole: gauge, shaft: mic }))).toBe(4.69);
    // read by the micrometer itself: √(10² + 2.5166²)
    const telescopic = { instrument: used({ instrument: "telescopic" }), readings: 1 };
    expect(microns(clearanceUncertainty({ hole: telescopic, shaft: mic }))).toBe(10.31);
  });
});
