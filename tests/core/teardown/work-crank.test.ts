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
