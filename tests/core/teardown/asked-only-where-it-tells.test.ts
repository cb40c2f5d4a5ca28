// Nothing is asked that can tell nothing: the ends of a crank on its V-blocks (handbook/teardown.md 1.1), other places of a part
// that is past its limit already; a single reading past a limit is taken once more (handbook/decision.md 2, G2). All invented.

import { describe, expect, test } from "vitest";
import {
  type Line,
  all,
  bore,
  find,
  journal,
  judgedAs,
  limit,
  measured,
  saw,
  soundBores,
} from "./judge-samples.ts";

describe("runout", () => {
  const runout = (label: string): Line => ["crank", label, "", "runout", 0.02];
  const count = (labels: readonly string[], mains?: number) => {
    const of = { ...saw, layout: mains === undefined ? {} : { mains } };
    return judgedAs(measured(labels.map(runout), {}, of), of).counts;
  };

  test("is counted at the inner mains alone", () => {
    expect(count(["2"], 3)).toMatchObject([{ expected: 1, measured: 1, missing: [], beyond: [] }]);
    expect(count(["2", "4"])).toMatchObject([{ expected: 3, measured: 2, missing: ["3"] }]);
  });

  test("at the ends counts for nothing, and is no slip", () => {
    expect(count(["1", "5"])).toMatchObject([{ measured: 0, missing: ["2", "3", "4"], beyond: [] }]);
    expect(count(["1", "3"], 3)).toMatchObject([{ measured: 0, missing: ["2"], beyond: [] }]);
    expect(count(["6"])).toMatchObject([{ beyond: ["6"] }]);
  });

  test("of a crank with two mains is not asked for", () => {
    expect(count(["1"], 2)).toEqual([]);
  });

  test("is named by its main", () => {
    const of = { ...saw, clearances: [limit("crank", "runout", { wear: [undefined, 0.05] })] };
    const { work } = judgedAs(measured([["crank", "2", "", "runout", 0.09]], {}, of), of);
    expect(work.find(({ code }) => code === "measure-missing")?.text).toBe("measure runout at mains 3 and 4");
    expect(work.find(({ code }) => code === "straighten-crank")?.why).toBe(
      "runout at main 2 0.09 mm, limit 0.05 mm",
    );
  });
});

describe("a settlement", () => {
  // 57.95 mm at least, by a micrometer of 3.9 um: the front is outside, the rear at the limit itself
  const spent = journal("main", "4", 57.93, 57.93, 57.951, 57.95);

  test("is not given where another place has decided", () => {
    const { items, work } = judgedAs(measured(spent));
    const rear = find(items, "main", "diameter", "4", "rear/90")[0]?.verdicts.find(
      ({ kind }) => kind === "wear",
    );
    expect(rear?.verdict).toBe("too-close-to-tell");
    expect(rear?.settlement).toBeUndefined();
    expect(work.map(({ code }) => code)).not.toContain("measure-better");
  });

  test("stays where nothing else decides, and of another part", () => {
    const near = journal("main", "4", 57.96, 57.96, 57.951, 57.95);
    const settled = (lines: readonly Line[]) =>
      find(judgedAs(measured(lines)).items, "main", "diameter", "4", "rear/90")
        .flatMap(({ verdicts }) => verdicts)
        .find(({ kind }) => kind === "wear")?.settlement;
    expect(settled(near)).toBeDefined();
    expect(settled([...near, ...journal("main", "2", 57.93)])).toBeDefined();
  });

  test("of a groove is not settled by a gap: the groove stays when the ring goes", () => {
    const rings: readonly Line[] = [
      ["ring", "1", "1/bottom", "end gap", "1.20..1.25"],
      ["ring", "1", "1", "side clearance", "0.14..0.16"],
    ];
    const [groove] = find(judgedAs(measured(rings)).items, "ring", "side clearance");
    expect(groove?.verdicts[0]).toMatchObject({ verdict: "too-close-to-tell" });
    expect(groove?.verdicts[0]?.settlement).toBeDefined();
  });
});

describe("a single reading past its limit", () => {
  const tapered = bore("3", 86.7, 86.68, 86.62, 86.6, 86.55, 86.54);
  const others = soundBores.filter(([, label]) => label !== "3");
  const again = (rows: ReturnType<typeof measured>) =>
    judgedAs(rows).work.filter(({ code }) => code === "measure-again");

  test("is taken once more before anything is ordered, and says of what", () => {
    expect(again(measured([...tapered, ...others]))).toEqual([
      {
        code: "measure-again",
        text: "measure bore 3 once more, set up anew, before you order",
        why: "read once, and past the limit: bore 3 taper 0.15 mm, limit 0.10 mm",
        labels: ["3"],
        part: "bore",
      },
    ]);
  });

  test("is enough beside a second reading, a second part or a score", () => {
    const before = measured(tapered).map((row) => ({ ...row, date: "2026-03-01" }) as const);
    expect(again([...before, ...measured([...tapered, ...others])])).toEqual([]);
    expect(again(measured([...tapered, ...others, ...journal("main", "2", 57.93)]))).toEqual([]);
    expect(again(measured([...tapered, ...others, ["bore", "1", "", "score", "nail catches"]]))).toEqual([]);
  });

  test("counts once for the bore and the piston that runs in it", () => {
    const pistons = all((label): readonly Line[] => [["piston", label, "", "diameter", 86.48]]);
    expect(again(measured([...tapered, ...others, ...pistons]))).toHaveLength(1);
  });

  test("of rings is enough: they are cheap", () => {
    expect(again(measured([["ring", "1", "1/bottom", "end gap", "1.20..1.25"]]))).toEqual([]);
  });
});

test("hone marks that are gone are no reason for rings by themselves", () => {
  const glazed: Line = ["bore", "2", "", "crosshatch", "none"];
  const textOf = (lines: readonly Line[]) =>
    judgedAs(measured(lines)).work.find(({ code }) => code === "re-ring-and-hone")?.text;
  expect(textOf([...soundBores, glazed])).toContain("alone it is no reason for rings");
  const gap: Line = ["ring", "1", "1/bottom", "end gap", "1.20..1.25"];
  expect(textOf([...soundBores, glazed, gap])).toMatch(/^re-ring and hone/);
});
