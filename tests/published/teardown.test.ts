// Clearances, sizes and ratios against what makers, magazines and standards print: data/reference/teardown-published.csv.
// A row called "formula" has a printed formula and a computed figure, "rule" a rounded rule, "memory" was not seen again.

import { readFileSync } from "node:fs";
import { type Length, length, sweptVolume, toSi, unitNamed, volume } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import {
  allConform,
  bothSides,
  probabilityOf,
  verdictOf,
} from "../../packages/core/src/teardown/conformity/index.ts";
import {
  bendOfRunout,
  boreFigures,
  boringSize,
  chamberVolume,
  chooseOversize,
  clearanceRange,
  clearanceWithShells,
  compressionRatio,
  gapChange,
  gapInBore,
  leastRingGap,
  threadClearance,
  threadSection,
  underRange,
} from "../../packages/core/src/teardown/figures/index.ts";
import { type ReferenceRow, referenceRows } from "./reference-rows.ts";

const rows = referenceRows("teardown-published");

/** `name=value unit; name=low..high unit` in SI, by name. */
const figures = (text = ""): Readonly<Record<string, readonly number[]>> =>
  Object.fromEntries(
    text.split(";").map((part) => {
      const [name = "", written = ""] = part.trim().split("=");
      const [numbers = "", unitText] = written.split(" ");
      const unit = unitText === undefined ? undefined : unitNamed(unitText);
      const values = numbers.split(/\.\.|\|/).map(Number);
      return [name, unit === undefined ? values : values.map((value) => toSi(value, unit))];
    }),
  );

const unitOf = ({ expected = "" }: ReferenceRow): number => {
  const unit = unitNamed(expected.split(";")[0]?.split(" ").at(-1) ?? "");
  return unit === undefined ? 1 : toSi(1, unit);
};

const holds = (row: ReferenceRow, found: Readonly<Record<string, readonly number[]>>): void => {
  const expected = figures(row.expected);
  expect(Object.keys(found), row.id).toEqual(Object.keys(expected));
  for (const [name, values] of Object.entries(expected))
    values.forEach((value, i) => {
      const off = Math.abs((found[name]?.[i] ?? NaN) - value) / unitOf(row);
      const said = `${row.id ?? ""} ${name} of ${row.source ?? ""}: off by ${String(off)}`;
      // the last digit of a decimal figure is not exact in binary
      expect(off, said).toBeLessThanOrEqual(Number(row.tolerance) * (1 + 1e-9));
    });
};

const given = (row: ReferenceRow) => {
  const all = figures(row.given);
  const list = (name: string): readonly number[] => {
    const values = all[name];
    if (values === undefined) throw new Error(`${row.id ?? ""}: nothing given of ${name}`);
    return values;
  };
  const one = (name: string): number => list(name)[0] ?? NaN;
  const size = (name: string): Length => length(one(name));
  return { list, one, size, sizes: (name: string) => list(name).map((value) => length(value)) };
};

const each = (...ids: readonly string[]) =>
  rows
    .filter(({ id = "" }) => ids.includes(id))
    .map((row) => [row.id, row.given, row.expected, row.source, row.status, row] as const);

const title = "%s: %s is %s (%s, %s)";

describe("compression ratio and displacement", () => {
  test.each(each("P1", "P2"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { one, size } = given(row);
    const clearance = chamberVolume({
      head: volume(one("head")),
      bore: size("bore"),
      gasket: { bore: size("gasketBore"), thickness: size("gasket") },
      deck: size("deck"),
      crown: one("crown"),
    });
    const swept = sweptVolume({ bore: size("bore"), stroke: size("stroke") });
    holds(row, { ratio: [compressionRatio(swept, clearance)] });
  });

  test.each(each("P3", "P4"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { one, size } = given(row);
    const swept = sweptVolume({ bore: size("bore"), stroke: size("stroke") });
    holds(row, { ratio: [compressionRatio(swept, volume(one("clearance")))] });
  });

  test.each(each("P5"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { one, size } = given(row);
    const swept = sweptVolume({ bore: size("bore"), stroke: size("stroke") });
    holds(row, { displacement: [swept * one("cylinders")] });
  });

  test.each(each("P6"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { one } = given(row);
    holds(row, {
      ratio: [compressionRatio(volume(one("swept")), volume(one("head") + one("rest")))],
    });
  });
});

describe("rings and bearings", () => {
  test.each(each("P7"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { size } = given(row);
    holds(row, { gap: [gapInBore(size("gap"), size("from"), size("to"))] });
  });

  test.each(each("P8"))(title, (_id, _given, _expected, _source, _status, row) => {
    holds(row, { gap: [gapChange(given(row).size("change"))] });
  });

  test.each(each("P9"))(title, (_id, _given, _expected, _source, _status, row) => {
    holds(row, { leastGap: [leastRingGap(given(row).size("bore"))] });
  });

  test.each(each("P10"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { size } = given(row);
    holds(row, { clearance: [clearanceWithShells(size("clearance"), size("shells"))] });
  });

  test.each(each("P11", "P12"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { size } = given(row);
    const { low, high } = underRange({ low: size("low"), high: size("high") }, size("undersize"));
    holds(row, { low: [low], high: [high] });
  });

  test.each(each("P13"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { sizes } = given(row);
    const range = clearanceRange(sizes("hole"), sizes("shaft"));
    holds(row, { smallest: [range?.smallest ?? NaN], largest: [range?.largest ?? NaN] });
  });

  test.each(each("P19"))(title, (_id, _given, _expected, _source, _status, row) => {
    holds(row, { bend: [bendOfRunout(given(row).size("runout"))] });
  });

  test.each(each("P21"))("%s: %s, %s (%s, %s)", (_id, text, _expected, _source, _status, row) => {
    const { size } = given(row);
    const section =
      text?.startsWith("round") === true ? { round: size("round") } : { square: size("square") };
    const area = "round" in section ? (Math.PI * section.round ** 2) / 4 : section.square ** 2;
    const thickness = threadClearance(threadSection(section), size("width"));
    expect(size("width") * thickness).toBeCloseTo(area, 18);
  });
});

describe("bores", () => {
  test.each(each("P17", "P18"))(title, (_id, _given, _expected, _source, _status, row) => {
    const { sizes, size } = given(row);
    const [pistons, clearances] = [sizes("piston"), sizes("clearance")];
    const sizesOf = [pistons.at(0), pistons.at(-1)].map((piston, i) =>
      boringSize(piston ?? length(NaN), clearances[i] ?? length(NaN), size("hone")),
    );
    holds(row, { boreTo: sizesOf });
  });

  test("P14: the cylindricity of a maker is max - min of one direction, held against its limits", () => {
    const [row] = rows.filter(({ id }) => id === "P14");
    const { size, sizes } = given(row ?? {});
    const [newLow = length(NaN)] = sizes("new");
    const reading = (along: string, across: string, over: number) => ({
      along,
      across,
      diameter: length(newLow + toSi(over, "mm")),
    });
    // 0.020 mm along the thrust side, 0.005 mm along the other; 0.055 mm between the two counts for nothing
    const { cylindricity = length(NaN), largest } = boreFigures([
      reading("top", "thrust", 0.08),
      reading("bottom", "thrust", 0.06),
      reading("top", "axial", 0.03),
      reading("bottom", "axial", 0.025),
    ]);
    expect(cylindricity).toBeCloseTo(toSi(0.02, "mm"), 9);
    const judged = (value: Length, high: Length) =>
      verdictOf(probabilityOf({ value, uncertainty: length(toSi(3, "um")) }, { high }));
    expect(judged(cylindricity, size("newCylindricity"))).toBe("outside");
    expect(judged(cylindricity, size("wearCylindricity"))).toBe("inside");
    expect(judged(largest?.diameter ?? length(NaN), size("wear"))).toBe("inside");
  });

  test("P20: out of round by more than a maker allows, one oversize, and it may be mixed", () => {
    const [row] = rows.filter(({ id }) => id === "P20");
    const { size } = given(row ?? {});
    const thou = (value: number): Length => length(toSi(value, "thou"));
    const figure = (value: Length) => ({ value, uncertainty: thou(0.2) });
    expect(verdictOf(probabilityOf(figure(thou(-4)), bothSides(size("outOfRound"))))).toBe("outside");
    expect(verdictOf(probabilityOf(figure(thou(1.5)), bothSides(size("taper"))))).toBe("inside");
    const standard = length(toSi(2.375, "in"));
    const { cylinders, size: forAll } = chooseOversize({
      cylinders: [
        { label: "1", largest: length(standard + size("over") * 3) },
        { label: "2", largest: length(standard + size("over") / 2) },
      ],
      original: standard,
      offered: [size("offered")],
      offset: "worst",
      honeStock: thou(1),
    });
    expect(cylinders.map((one) => one.size)).toEqual([size("offered"), size("offered")]);
    expect(forAll).toBe(size("offered"));
  });
});

test.each(each("P24"))(
  "%s: %s is %s (%s, from memory: %s)",
  (_id, _given, _expected, _source, _status, row) => {
    const chances = given(row)
      .list("z")
      .map((z) => probabilityOf({ value: length(0), uncertainty: length(1e-6) }, { high: length(z * 1e-6) }));
    holds(row, { p: chances });
  },
);

test("the handbook's worked verdicts (computed there), to the digits that it prints", () => {
  // JSON of the outside program by the row of 3.4; what the handbook prints beside it
  const printed = { "3.4-1": 0.9997, "3.4-2": 0.8021, "3.4-3": 0.8849, "3.4-4": 0.0228, "3.4-5": 0.0005 };
  const more = { "3.4-7-new": 0.8044, "3.4-9": 0.9479, "3.4-9-lower": 0.9848, "3.4-10": 0.7866 };
  const feelers = { "3.4-6": 0.9521, "3.4-6-narrow": 0.6, "3.4-8": 0.2275, "3.4-8-thin": 0.997 };
  const file = new URL("../../data/reference/teardown-cases.json", import.meta.url);
  const cases = JSON.parse(readFileSync(file, "utf8")) as Record<
    "judgements" | "feelers",
    readonly { readonly id: string; readonly expected: { readonly p: number } }[]
  >;
  const found = [...cases.judgements, ...cases.feelers];
  for (const [id, p] of Object.entries({ ...printed, ...more, ...feelers }))
    expect(found.find((one) => one.id === id)?.expected.p, id).toBeCloseTo(p, 4);
  expect(allConform([0.9996, 0.985, 0.99, 0.998, 0.999, 0.9999]).atLeast).toBeCloseTo(0.9715, 4);
});

test("every row names a source of data/sources.csv and says how far it was seen", () => {
  const sources = readFileSync(new URL("../../data/sources.csv", import.meta.url), "utf8");
  const keys = new Set(sources.split("\n").map((line) => line.split(",")[0]));
  expect(rows.filter(({ source = "" }) => !keys.has(source))).toEqual([]);
  const statuses = ["published", "formula", "rule", "memory", "misprint", "agree"];
  expect(rows.filter(({ status = "" }) => !statuses.includes(status))).toEqual([]);
});
