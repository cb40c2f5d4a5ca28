// What follows for crank, bearings and rods. Sources: the handbook's table, makers' manuals where named, else common practice.

import { expect, test } from "vitest";
import {
  containing,
  all,
  codes,
  journal,
  judgedAs,
  limit,
  measured,
  saw,
  soundPins,
  type Line,
  workOf,
} from "./judge-samples.ts";

// computed (handbook Q5, with mains as there): 57.93 smallest on 57.982 to 58.000, 0.05 to clean: 0.12, so 0.25
test("a main past its size: grind all mains, after a look for cracks", () => {
  const mains = ["57.96", "57.93", "57.97", "57.95", "57.96"].flatMap((size, i) =>
    journal("main", String(i + 1), Number(size)),
  );
  const assessment = judgedAs(measured(mains));
  expect(assessment.undersizes).toMatchObject([{ part: "main", decidedBy: "2", unit: "mm" }]);
  expect((assessment.undersizes[0]?.needed ?? 0) * 1000).toBeCloseTo(0.12, 6);
  expect(assessment.work).toMatchObject([
    { code: "measure-again", text: "measure main 2 once more, set up anew, before you order" },
    {
      code: "grind-crank",
      text: "look for cracks before paying, then grind all mains to -0.25 mm (57.732 to 57.750 mm); shells of the same size, fillets as they were",
    },
  ]);
});

test("what is missing for the size to grind to is named: the sizes, the size when new, or a measurement", () => {
  const worn = measured(journal("main", "1", 57.9));
  const without = (isNoneOffered: boolean): typeof saw => ({
    ...saw,
    clearances: [limit("main", "diameter", { wear: [57.95, undefined] })],
    offered: isNoneOffered ? {} : saw.offered,
  });
  const text = (...as: Parameters<typeof judgedAs>) =>
    judgedAs(...as).work.find(({ code }) => code === "grind-crank")?.text;
  expect(text(worn, without(true))).toContain(`engine set ${saw.id} limits.offered.main)`);
  expect(text(worn, without(false))).toContain(
    `(size when new: sealtrend engine set ${saw.id} limits.main.diameter.new)`,
  );
  const scored: Line = ["main", "2", "front", "appearance", "scored"];
  expect(text(measured([scored]))).toContain("(which size: measure the mains, the smallest decides)");
});

test("a journal that is scored is ground though its sizes are right", () => {
  const scored: Line = ["pin", "2", "front", "appearance", "scored"];
  expect(codes(judgedAs(measured([...soundPins, scored])))).toEqual(["grind-crank"]);
});

const shells = (clearance: number) =>
  all((label): readonly Line[] => [["rod bearing", label, "middle/90", "bore", 47.985 + clearance]]);

test("a loose bearing on a good journal: a fine step, then the housing", () => {
  expect(workOf([...soundPins, ...shells(0.14)])).toMatchObject([
    {
      code: "fine-step-shells",
      labels: ["1", "2", "3", "4"],
      caution: containing("caps never swap"),
    },
  ]);
});

test("worn shells on good journals: new bearings only, and the cause first", () => {
  const wiped: Line = ["rod bearing", "2", "lower", "appearance", "copper showing"];
  const lines = workOf([...soundPins, ...shells(0.04), wiped]);
  expect(lines).toMatchObject([
    { code: "new-bearings", why: "rod bearing 2 lower appearance: copper showing" },
  ]);
  expect(lines[0]?.text).toBe(
    "new bearing shells; find the cause first: dirt, oil supply, a bent rod or cap",
  );
});

test("end play, runout and side play each bring their own work", () => {
  const limits = [
    ...saw.clearances,
    limit("crank", "runout", { wear: [undefined, 0.05] }),
    limit("rod", "side clearance", { wear: [undefined, 0.4] }),
  ];
  const lines: readonly Line[] = [
    ["crank", "", "", "end play", 0.6],
    ...["1", "2", "3", "4", "5"].map((label): Line => [
      "crank",
      label,
      "",
      "runout",
      label === "3" ? 0.12 : 0.01,
    ]),
    ...["1", "2", "3", "4"].map((label): Line => [
      "rod",
      label,
      "",
      "side clearance",
      label === "2" ? "0.50..0.55" : "0.20..0.25",
    ]),
  ];
  expect(codes(judgedAs(measured(lines), { ...saw, clearances: limits }))).toEqual([
    "straighten-crank",
    "thrust-washers",
    "rods",
  ]);
});

test("a size by some of the pins is told as such, and the rest are measured first", () => {
  const [first, second] = workOf(journal("pin", "1", 47.93, 47.93));
  expect(workOf(journal("pin", "1", 47.93, 47.93)).map(({ code }) => code)).toContain("grind-crank");
  const lines = workOf([...journal("pin", "1", 47.93, 47.93), ...journal("pin", "2", 47.93)]);
  expect(lines.map(({ code }) => code)).toEqual(["measure-missing", "grind-crank"]);
  expect(lines[0]?.text).toBe("measure pins 3 and 4, diameter, first: -0.25 mm by 2 of 4 so far");
  expect(lines[1]?.text).toBe(
    "look for cracks before paying, then grind all pins to -0.25 mm so far (47.732 to 47.750 mm; by 2 of 4); shells of the same size, fillets as they were",
  );
  expect([first?.code, second?.code]).toEqual(["measure-again", "measure-missing"]);
});

test("figures that wait are not counted for a size", () => {
  const lines = workOf([
    ...["1", "2", "3"].flatMap((label) => journal("pin", label, 47.93, 47.93)),
    ...journal("pin", "4", 47.98),
    ...journal("pin", "4", 47.48),
  ]);
  expect(lines.find(({ code }) => code === "grind-crank")?.text).toContain("by 3 of 4");
});

test("what settles several figures is told once, of the one nearest its limit", () => {
  const lines = workOf(
    ["1", "2", "3", "4"].flatMap((label) => journal("pin", label, 47.952, label === "3" ? 47.951 : 47.953)),
  );
  const [better] = lines;
  expect(better?.code).toBe("measure-better");
  expect(better?.text).not.toContain("; or ");
  expect(better?.why).toContain("too close to tell: pin 3 front/90 diameter 47.951 mm");
});
