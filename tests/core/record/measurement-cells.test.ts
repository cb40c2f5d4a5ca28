// The cells of a row of measurements.csv: parts with their quantities, places, labels and figures.

import {
  measuredParts,
  partNames,
  placeExample,
  quantitiesOf,
  quantityOf,
  readEngine,
  readLabel,
  readMeasured,
  readMeasuredLength,
  readPlace,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { read } from "./measurement-rows.ts";

const mm = (value: number): unknown => expect.closeTo(value / 1000, 12);

describe("the table of parts", () => {
  test("every quantity is read with the label and place it is to have, in every unit or word", () => {
    const labels = {
      cylinder: "3",
      journal: "2",
      rod: "3",
      valve: "3in",
      face: "",
      casting: "head",
      none: "",
    };
    let count = 0;
    for (const part of partNames)
      for (const { name, kind, words, label, places } of quantitiesOf(part))
        for (const value of kind === "word" ? words : ["0.5"]) {
          const unit = { length: "mm", volume: "ml", force: "N", word: "" }[kind];
          const row = `1,2026-03-02,${part},${labels[label]},${placeExample({ places })},${name},${value},${unit},,,,,`;
          expect([row, read(row).problems]).toEqual([row, []]);
          count += 1;
        }
    expect(count).toBeGreaterThan(50);
  });

  test("it holds what the contract lists of the bore, the ring and the bearings", () => {
    const names = (part: keyof typeof measuredParts) => quantitiesOf(part).map(({ name }) => name);
    expect(names("bore")).toEqual(["diameter", "ridge", "crosshatch", "score", "score depth"]);
    expect(names("ring")).toEqual(["end gap", "side clearance"]);
    expect(names("rod bearing")).toEqual(["bore", "thread clearance", "appearance"]);
    expect(quantityOf("main bearing", "appearance")?.words).toEqual(
      "normal,one-sided,wiped,scored,embedded,cracked or flaking,corroded,polished back,copper showing".split(
        ",",
      ),
    );
    expect(quantityOf("bore", "taper")).toBeUndefined();
  });
});

describe("places", () => {
  const place = (part: keyof typeof measuredParts, quantity: string, text: string) => {
    const known = quantityOf(part, quantity);
    return known === undefined ? "no such quantity" : readPlace(known, text);
  };
  test.each([
    ["bore", "diameter", " Top / AXIAL ", "top/axial"],
    ["bore", "diameter", "unworn/thrust", "unworn/thrust"],
    ["bore", "diameter", "unworn", "unworn"],
    ["bore", "diameter", "", undefined],
    ["bore", "diameter", "thrust/top", undefined],
    ["bore", "crosshatch", "", ""],
    ["main", "diameter", "front/090", "front/90"],
    ["main", "diameter", "front/22,5°", "front/22.5"],
    ["main", "diameter", "front/360", undefined],
    ["main", "diameter", "front/-90", undefined],
    ["ring", "end gap", "oil/bottom", "oil/bottom"],
    ["ring", "end gap", "2", "2"],
    ["ring", "end gap", "6", undefined],
    ["head", "gap", "diagonal2/240,5mm", "diagonal2/240.5"],
    ["head", "gap", "between 1 - 2", "between 1-2"],
    ["head", "gap", "between 1-2/40", "between 1-2/40"],
    ["housing", "bore", "rod/60", "rod/60"],
    ["crank", "end play", "front", undefined],
    ["crack", "found by", "Between 2 and 3, exhaust / water", "between 2 and 3, exhaust / water"],
  ] as const)("%s %s %j is %j", (part, quantity, text, at) => {
    expect(place(part, quantity, text)).toBe(at);
  });
});

describe("labels", () => {
  const vee = readEngine(
    '{ "cylinders": ["L1", "L2", "R1", "R2"], "ignition": "spark" }',
    "engine.json",
    "v",
  );
  const cylinders = vee.engine?.cylinders ?? [];
  test.each([
    ["cylinder", "l1", "L1"],
    ["cylinder", "1", undefined],
    ["cylinder", "", undefined],
    ["journal", "7", "7"],
    ["journal", "0", undefined],
    ["journal", "L1", undefined],
    ["rod", "R2", "R2"],
    ["rod", "2", "2"],
    ["valve", "l2IN", "L2in"],
    ["valve", "R1 ex2", "R1ex2"],
    ["valve", "R1", undefined],
    ["valve", "L3in", undefined],
    ["face", "", ""],
    ["face", "Left", "left"],
    ["casting", "main cap 3", "main cap 3"],
    ["none", "", ""],
    ["none", "1", undefined],
  ] as const)("%s %j is %j", (kind, text, label) => {
    expect(readLabel(kind, text, cylinders)).toBe(label);
  });
});

describe("figures", () => {
  test.each([
    ["3-7/16", "in", 3.4375 * 0.0254],
    ["7/16", "in", 0.4375 * 0.0254],
    [".040", "in", 0.04 * 0.0254],
    ["86,62", "mm", 0.08662],
    ["2.4986", "in", 2.4986 * 0.0254],
    ["22", "thou", 22 * 2.54e-5],
    ["350", "um", 350e-6],
    ["0", "mm", 0],
  ] as const)("%s %s", (text, unit, si) => {
    expect(readMeasuredLength(text, unit)).toEqual({
      ok: true,
      value: { kind: "length", value: expect.closeTo(si, 12) as number },
    });
  });

  test.each([
    ["0.35..0.40", 0.35, 0.4],
    [".35...40", 0.35, 0.4],
    ["0,35 .. 0,40", 0.35, 0.4],
    ["< 0.04", 0, 0.04],
    ["<.04", 0, 0.04],
  ])("between the feelers of %s", (text, low, high) => {
    expect(readMeasuredLength(text, "mm")).toEqual({
      ok: true,
      value: { kind: "between", low: mm(low), high: mm(high) },
    });
  });

  test.each([
    ["", "empty"],
    ["+0.12", "sign"],
    ["-0.12", "sign"],
    ["-0.1..0.2", "sign"],
    ["0.4..0.4", "leaves"],
    ["<0", "leaves"],
    ["<", "not-a-number"],
    ["0.3..", "two-marks"],
    ["3-7/16", "fraction"],
    ["86.62mm", "unit-inside"],
    ["86.5O", "letter-o"],
    ["1e-3", "exponent"],
    ["9000", "too-much"],
    ["86.62/86.63", "pair"],
  ])("%j mm is refused: %s", (text, fault) => {
    expect(readMeasuredLength(text, "mm")).toEqual({ ok: false, fault });
  });

  test.each(["3-16/7", "1/3", "0/0", "16/16"])("%s is no fraction of a rule", (text) => {
    expect(readMeasuredLength(text, "in")).toEqual({ ok: false, fault: "fraction" });
  });

  test("a mark that could part thousands is decimal where so much cannot be meant, else asked for", () => {
    const gap = { kind: "length", unit: "mm", most: 0.03 } as const;
    const lengthOf = (value: number) => ({ ok: true, value: { kind: "length", value: mm(value) } });
    expect(readMeasured("1,250", { ...gap, delimiter: ";" })).toEqual(lengthOf(1.25));
    expect(readMeasured("1.250", { ...gap, most: 2, delimiter: "," })).toEqual(lengthOf(1.25));
    expect(readMeasured("1.250", { ...gap, most: 2, delimiter: ";" })).toEqual({
      ok: false,
      fault: "two-ways",
      small: 1.25,
      large: 1250,
    });
    const open = read('1,2026-03-02,spring,3in,,free length,"1,250",mm,,,,,');
    expect(open.problems).toMatchObject([{ code: "number-two-ways", line: 2 }]);
  });
});
