// One place read more than once: repeats, a slip and its mend, the same lines entered again, states. Engine invented.

import { expect, test } from "vitest";
import { judgeTeardown, readMeasurements, type Engine, type TeardownAssessment } from "@sealtrend/core/parts";
import { inch, mm } from "./consistency-samples.ts";
import { bore, codes, containing, find, journal, judgedAs, limit, measured, saw } from "./judge-samples.ts";

const inches: Engine = {
  ...saw,
  clearances: [limit("pin", "diameter", { fresh: [2.248, 2.249], unit: "in" })],
  offered: { pin: { unit: "in", sizes: [0.01, 0.02].map(inch) } },
};
const pin = (label: string, ...values: readonly number[]) =>
  values.map((value) => ["pin", label, "front/0", "diameter", value] as const);
const inInches = { unit: "in", resolution: 0.0001 } as const;

/** Rows with columns of their own choice. */
const read = (of: Engine, columns: string, ...rows: readonly string[]): TeardownAssessment => {
  const { measurements, problems } = readMeasurements([columns, ...rows].join("\n"), "measurements.csv", of);
  expect(problems).toEqual([]);
  const judged = judgeTeardown({ engine: of, measurements });
  if (judged === undefined) throw new RangeError("nothing was measured");
  return judged;
};

// by hand: read by a 0.0001 in micrometer 2.6 um, 4·√2·2.6 = 15 um = 0.0006 in; apart 0.025 in, one turn of the thimble
test("a slip and its mend are not averaged: the figure waits and the slip is named", () => {
  const judged = judgedAs(
    measured(
      [...pin("1", 2.2484), ...pin("2", 2.2235, 2.2485), ...pin("3", 2.2486), ...pin("4", 2.2483)],
      inInches,
    ),
    inches,
  );
  expect(judged.conflicts).toMatchObject([
    {
      code: "repeats-apart",
      weight: "conflict",
      part: "pin",
      label: "2",
      text: "pin 2 front/0 was read 2.2235 and 2.2485 in: they cannot both be right",
      mend: "2.2235 in is off by 0.025 in, one turn of an inch micrometer: type `pin 2 front/0 instead: 2.2485in`",
    },
  ]);
  expect(find(judged.items, "pin", "diameter", "2")).toMatchObject([{ waits: true, waitsFor: "figures" }]);
  expect(codes(judged)).toEqual(["measure-better"]);
  expect(judged.undersizes).toEqual([]);
});

test("two of a kind that no slip explains are measured once more", () => {
  const judged = judgedAs(measured([...bore("1", 86.52), ...bore("1", 86.6)]));
  expect(judged.conflicts).toMatchObject([
    {
      code: "repeats-apart",
      mend: "measure it again, then type `bore 1 top/thrust instead:` with what it reads",
    },
  ]);
});

const bores: Engine = {
  ...saw,
  clearances: [limit("bore", "diameter", { fresh: [3.939, 3.9405], wear: [undefined, 3.945], unit: "in" })],
};
const top = (label: string, ...values: readonly number[]) =>
  measured(
    values.map((value) => ["bore", label, "top/axial", "diameter", value] as const),
    { unit: "in", resolution: 0.0001 },
  );
const others = ["1", "2", "3"].flatMap((label) => top(label, 3.94));

// by hand: swapping the last two of 3.9440 makes 3.9404, near 3.9400 and another number
test("a worn reading is not talked away: only a swap to the very figures read is offered", () => {
  expect(judgedAs([...others, ...top("4", 3.94, 3.944)], bores).conflicts).toMatchObject([
    {
      code: "repeats-apart",
      mend: "measure it again, then type `bore 4 top/axial instead:` with what it reads",
    },
  ]);
  expect(judgedAs([...others, ...top("4", 3.9404, 3.944)], bores).conflicts).toMatchObject([
    { mend: "3.9440 in is two figures swapped: type `bore 4 top/axial instead: 3.9404in`" },
  ]);
});

test("repeats as far apart as the instrument explains are averaged as before", () => {
  expect(judgedAs(measured([...bore("1", 86.52), ...bore("1", 86.53)])).conflicts).toEqual([]);
});

test("by another instrument too: the finer one does not quietly win over a slip", () => {
  const coarse = measured(journal("pin", "1", 47.48), { resolution: 0.01 });
  const fine = measured(journal("pin", "1", 47.985), { resolution: 0.001 });
  expect(judgedAs([...coarse, ...fine]).conflicts).toMatchObject([{ code: "repeats-apart" }]);
});

const columns = "date,part,label,at,quantity,value,unit,instrument,resolution,state,note,instead";
const row = (value: string, more = "") =>
  `2026-03-02,pin,2,front/0,diameter,${value},in,micrometer,0.0001,as found,,${more}`;

test("a row that stands instead takes the place of those before it, those behind it repeat it", () => {
  const judged = read(inches, columns, row("2.2235"), row("2.2484", "yes"), row("2.2486"));
  expect(judged.conflicts).toEqual([]);
  expect(
    judged.items.map(({ value, superseded, readings }) => [
      Number((value / 0.0254).toFixed(5)),
      superseded,
      readings,
    ]),
  ).toEqual([
    [2.2235, true, 1],
    [2.2485, undefined, 2],
  ]);
  expect(judged.items[0]).toMatchObject({ supersededBy: { by: "instead", state: "as found" } });
});

test("a finding can be taken back the same way", () => {
  const seen = (word: string, more = "") =>
    `2026-03-02,bore,2,top/thrust,score,${word},,eye,,cleaned,,${more}`;
  const judged = read(saw, columns, seen("nail catches"), seen("light", "yes"));
  expect(judged.findings.map(({ word }) => word)).toEqual(["light"]);
  expect(judged.spoilt).toEqual([]);
});

test("what an earlier state read is left out and says by what", () => {
  const judged = judgedAs([
    ...measured(journal("pin", "2", 47.99), { state: "cleaned" }),
    ...measured(journal("pin", "2", 47.93), { state: "as found" }),
  ]);
  expect(judged.items.map(({ supersededBy }) => supersededBy)).toEqual([
    undefined,
    { by: "state", state: "cleaned", value: mm(47.99) },
  ]);
});

test("a figure that is left out is still looked at for slips, and nothing waits for it", () => {
  const judged = judgedAs([
    ...measured(journal("pin", "2", 479.9), { state: "as found" }),
    ...measured(journal("pin", "2", 47.99), { state: "cleaned" }),
  ]);
  expect(judged.conflicts).toMatchObject([{ code: "likely-slip", weight: "doubtful", label: "2" }]);
  expect(judged.items[1]?.waits).toBeUndefined();
});

const six = (note = "") =>
  ["86.62", "86.58", "86.56", "86.55", "86.53", "86.52"].map((value, i) => {
    const at = `${["top", "middle", "bottom"][Math.floor(i / 2)] ?? ""}/${i % 2 === 0 ? "thrust" : "axial"}`;
    return `2026-03-02,bore,3,${at},diameter,${value},mm,bore-gauge,0.01,cleaned,${note},`;
  });

test("the same lines entered again count once and are asked about", () => {
  const judged = read(saw, columns, ...six(), ...six());
  expect(judged.items.map(({ readings }) => readings)).toEqual([1, 1, 1, 1, 1, 1]);
  expect(judged.conflicts).toMatchObject([
    {
      code: "entered-twice",
      weight: "doubtful",
      part: "bore",
      label: "3",
      text: "bore 3 diameter: 6 figures stand twice, digit for digit: counted once",
    },
  ]);
});

test("another sitting, or repeats beside each other, are repeats", () => {
  const again = read(saw, columns, ...six(), ...six("measured again"));
  expect(again.conflicts).toEqual([]);
  const together = read(saw, columns, ...six().flatMap((line) => [line, line]));
  expect(together.items.map(({ readings }) => readings)).toEqual([2, 2, 2, 2, 2, 2]);
});

test("where no resolution was stated the digits tell it", () => {
  const bare = (value: string) => `2026-03-02,pin,2,front/0,diameter,${value},mm,micrometer,,as found,,`;
  expect(read(saw, columns, bare("47.990")).items[0]?.uncertaintyFrom).toBe(
    "micrometer, 0.001 mm by the digits",
  );
  expect(read(saw, columns, bare("47.99")).items[0]?.uncertaintyFrom).toBe("micrometer, 0.01 mm assumed");
  // tenths of a thou, not halves of one
  const small = (value: string) => `2026-03-02,pin,2,front/0,diameter,${value},in,micrometer,,as found,,`;
  expect(read(inches, columns, small("2.2483")).items[0]?.uncertaintyFrom).toBe(
    "micrometer, 0.0001 in by the digits",
  );
  expect(read(inches, columns, small("2.2485")).items[0]?.uncertaintyFrom).toBe(
    "micrometer, 0.0005 in assumed",
  );
});

test("a caliper is never for journals", () => {
  const judged = judgedAs(measured(journal("pin", "1", 47.95), { instrument: "caliper", resolution: 0.02 }));
  expect(judged.conflicts).toMatchObject([
    {
      code: "wrong-instrument",
      weight: "doubtful",
      mend: containing("a caliper is never for journals: use a micrometer"),
    },
  ]);
  const [pin1] = judged.items;
  const settled = pin1?.verdicts.flatMap(({ settlement }) => settlement?.text ?? []) ?? [];
  // above both limits by 0.05 mm and on one of them: any micrometer tells the first
  expect(settled).toEqual([
    "a caliper is never for journals: micrometer 0.01 mm",
    "a caliper is never for journals: use a micrometer",
  ]);
});

test("a gap that cannot be is told by its two leaves, and the ring by its cylinder", () => {
  const judged = judgedAs(measured([["ring", "3", "1/bottom", "end gap", "4.50..4.60"]]));
  expect(judged.conflicts).toMatchObject([
    { text: containing("ring 1 of cylinder 3, bottom end gap 4.50 to 4.60 mm cannot be") },
  ]);
});
