// The screen of `teardown` on teardowns made by hand. Contract: design.md §4 and screens.md (answer first, columns under their
// labels, 24 x 80, the verdict in a word); the limits and figures are invented.

import { type TeardownAssessment, length } from "@sealtrend/core";
import { expect, test } from "vitest";
import { blocksOf } from "../../../packages/cli/src/render/teardown/teardown-rows.ts";
import { blockLines } from "../../../packages/cli/src/render/teardown/teardown-table.ts";
import { teardownScreen } from "../../../packages/cli/src/render/teardown/teardown.ts";
import { assessed, inches, item, mm, sixPins, verdict, wornBore } from "./teardown-values.ts";

const labels = (n: number): string[] => Array.from({ length: n }, (_, i) => String(i + 1));
const screen = (
  assessment: TeardownAssessment,
  {
    n = 6,
    width = 80,
    units,
    detail = "short",
  }: { n?: number; width?: number; units?: string; detail?: "short" | "why" } = {},
): readonly string[] =>
  teardownScreen(assessment, { engine: { id: "tractor", cylinders: labels(n) }, width, units, detail });

test("the answer stands first, how much was measured at its right, and the figures under their labels", () => {
  expect(screen(sixPins)).toEqual([
    "Rod bearing 6 is too close to tell; the rest is inside.        13 of 13 measured",
    "",
    "rod bearing               1       2       3       4       5       6",
    "thread clearance in  0.0015  0.0015  0.0020  0.0015  0.0020  0.0022",
    "                     inside  inside  inside  inside  inside   close",
    "  ± 0.0005, new 0.0010 to 0.0025 (workshop book p. 62)",
    "",
    "settle rod bearing 6 thread clearance (about 9 in 10 inside): bore gauge set in",
    "       the micrometer that measures the pin, two readings",
    "",
    "next   sealtrend decide tractor --opened bottom-open",
    "       the sheet for the machine shop: sealtrend page tractor --for shop",
  ]);
});

test("what is outside is named with its figure; then doubts, work in order, what was seen, what is missing, one caution", () => {
  const lines = screen(wornBore, { n: 4 });
  expect(lines[0]).toBe("Bore 3 is outside (taper +0.12 mm, wear up to 0.10); the rest is inside.");
  expect(lines[1]).toBe(`${" ".repeat(65)}8 of 9 measured`);
  const starts = lines.flatMap((line) => /^(check|work|seen|Not|CARE|next)/.exec(line)?.[1] ?? []);
  expect(starts).toEqual(["check", "work", "seen", "Not", "CARE", "next"]);
  expect(lines.length).toBeLessThanOrEqual(24);
});

test("what size cleans up is told under --why for each place of the bar, cylinder by cylinder", () => {
  const why = screen(wornBore, { n: 4, detail: "why" }).join("\n").replace(/\s+/g, " ");
  expect(why).toContain(
    "+0.50 mm cleans up all if all wear is on one wall: finished 87.00 mm, bored to 86.98",
  );
  expect(why).toContain("+0.25 mm cleans up all if the bar is centred in the worn bore: finished 86.75 mm");
  expect(why).toContain("3: 86.95 mm needed, +0.50 mm does");
});

test("us and metric change lengths, a unit of pressure does not", () => {
  expect(screen(sixPins, { units: "metric" }).join("\n")).toContain("mm   0.038   0.038   0.051");
  expect(screen(sixPins, { units: "bar" })).toEqual(screen(sixPins));
  expect(screen(wornBore, { n: 4, units: "us" })[0]).toContain("taper +0.0047 in, wear up to 0.0039");
});

test("the wear limit says what may stay in: outside as new and inside it is worn but serviceable", () => {
  const play = item({
    part: "crank",
    quantity: "end play",
    value: mm(0.4),
    verdicts: [
      verdict({ kind: "new", low: mm(0.1), high: mm(0.35), probability: 0.0001, verdict: "outside" }),
      verdict({ kind: "wear", high: mm(0.45), probability: 0.999 }),
    ],
  });
  expect(screen(assessed({ items: [play] })).slice(0, 4)).toEqual([
    "Crank is worn but serviceable (outside as new, inside the wear limit).",
    "",
    "crank: end play 0.40 ± 0.012 mm worn (new 0.10 to 0.35, wear up to 0.45)",
    "  limits: workshop book p. 62",
  ]);
});

test("figures that contradict each other have no verdict until they are measured again", () => {
  const lines = screen({
    ...sixPins,
    items: sixPins.items.map((one) => (one.label === "6" ? { ...one, waits: true, standing: "waits" } : one)),
    conflicts: [
      {
        code: "two-ways",
        part: "rod bearing",
        label: "6",
        quantity: "clearance",
        text: "rod bearing 6: 0.0022 in by thread, 0.0009 in as bearing less journal",
        mend: "measure both again",
        weight: "conflict",
      },
    ],
  });
  expect(lines[0]).toBe("Rod bearing 6 is not judged: figures that cannot all be right; the rest is");
  expect(lines.join("\n")).toContain("inside  inside  inside  inside  inside   waits");
  expect(lines.join("\n")).toContain("waits: no verdict, see check");
  expect(lines.join("\n")).toMatch(/check {2}rod bearing 6: 0.0022 in by thread.*\n.*measure both\n? *again/);
  expect(lines.join("\n")).not.toContain("settle");
});

test("without limits there are values and no verdict, and what is missing a limit is named", () => {
  const lines = screen(
    assessed({
      items: [item({ part: "bore", label: "1", quantity: "diameter", value: mm(86.52) })],
      withoutLimit: [{ part: "bore", quantity: "diameter" }],
    }),
    { n: 1 },
  );
  expect(lines[0]).toBe("No limit is recorded for what was measured: values only, no verdict.");
  expect(lines.join("\n")).not.toMatch(/inside|outside|close/);
  expect(lines.join("\n")).toContain("No limit recorded for bore diameter.");
});

test("all inside is said only where all was measured", () => {
  const inside = assessed({
    derived: wornBore.derived.filter(({ label }) => label !== "3"),
    counts: [{ part: "bore", expected: 4, measured: 3, missing: ["3"], beyond: [], from: "cylinders" }],
  });
  expect(screen(inside, { n: 4 })[0]).toMatch(
    /^All that was measured is inside; not all was measured\. +3 of 4 measured$/,
  );
  expect(screen(inside, { n: 4 }).join("\n")).toContain("Not measured: bore 3.");
  expect(screen({ ...inside, counts: [] }, { n: 4 })[0]).toBe("All is inside.");
});

test("a figure taken again after the work takes the place of the one before it", () => {
  const again = wornBore.derived.map((one) => ({
    ...one,
    value: length(0.00001),
    state: "after machining" as const,
    standing: "inside" as const,
    verdicts: one.verdicts.map((was) => ({ ...was, probability: 1, verdict: "inside" as const })),
  }));
  const before = wornBore.derived.map((one) => ({ ...one, superseded: true as const }));
  const lines = screen(assessed({ ...wornBore, parts: [], derived: [...before, ...again] }), { n: 4 });
  expect(lines[0]).toMatch(/^All that was measured is inside/);
});

/** Every quantity of every part too close or outside, on an engine of 28 cylinders. */
const everything = assessed({
  ...wornBore,
  items: (["main", "pin", "rod bearing", "main bearing", "ring", "piston", "guide"] as const).flatMap(
    (part) =>
      labels(28).flatMap((label) =>
        ["diameter", "clearance", "end gap"].map((quantity, i) =>
          item({
            part,
            label,
            quantity,
            value: inches(0.002 * (i + 1)),
            unit: "in",
            verdicts: [
              verdict({
                high: inches(0.002),
                probability: i === 0 ? 0.5 : 0.001,
                verdict: i === 0 ? "too-close-to-tell" : "outside",
                settlement: { needed: inches(0.0001), text: `${part}: ask the shop to measure` },
              }),
            ],
          }),
        ),
      ),
  ),
  work: Array.from({ length: 12 }, (_, i) => ({
    code: "pistons" as const,
    text: `work number ${String(i)} which takes a long line to say what is to be done`,
    why: "because of many a figure, each of them outside its limit by far",
    labels: [],
  })),
});

test("the short form fits 24 lines of 80 columns, whatever was measured; --why leaves nothing out", () => {
  for (const assessment of [sixPins, wornBore, everything]) {
    const lines = screen(assessment, { n: 28 });
    expect(lines.length).toBeLessThanOrEqual(24);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  }
  const why = screen(everything, { n: 28, detail: "why" }).join("\n");
  for (const { part, label = "" } of everything.items)
    expect(why).toContain(part === "ring" ? `rings of cylinder ${label} ` : `${part} ${label} `);
  expect(why).toContain("work number 11");
});

test("what is left out of the short form is counted, and --why is named", () => {
  expect(screen(everything, { n: 28 }).join("\n")).toMatch(
    /\nwork .*\n( {7}.*\n)* {7}.*\(\d+ more: --why\)\n/,
  );
});

test.each([40, 60])("at %i columns no line but a command is longer", (width) => {
  for (const assessment of [sixPins, wornBore])
    for (const detail of ["short", "why"] as const)
      for (const line of screen(assessment, { n: 6, width, detail }))
        if (!line.includes("sealtrend ")) expect(line.length).toBeLessThanOrEqual(width);
});

test("--why tells the uncertainty and where it comes from, the chance, the counts and how a verdict comes about", () => {
  const why = screen(sixPins, { detail: "why" }).join("\n").replace(/\s+/g, " ");
  expect(why).toContain("rod bearing 6 thread clearance 0.0022 in; u 0.00025 in (gauging thread)");
  expect(why).toContain("too close to tell, about 9 in 10 inside, needs u 0.00018 in (workshop book p. 62)");
  expect(why).toContain("mains: 7 of 7 (as engine.json says)");
  expect(why).toContain("JCGM 106:2012 clause 7");
});

test("what is worn but may stay in is named where nothing is worse, and counted beside what is", () => {
  const worn = ["1", "2", "3"].map((label) =>
    item({
      part: "piston",
      label,
      quantity: "diameter",
      value: mm(85.9),
      verdicts: [
        verdict({ kind: "new", low: mm(85.95), probability: 0.0001, verdict: "outside" }),
        verdict({ kind: "wear", low: mm(85.8) }),
      ],
    }),
  );
  const flat = (items: typeof worn) => screen(assessed({ items })).join(" ").replace(/\s+/g, " ");
  expect(flat(worn)).toMatch(/^Pistons 1, 2 and 3 are worn but serviceable \(/);
  const far = item({
    part: "crank",
    quantity: "end play",
    value: mm(0.6),
    verdicts: [verdict({ high: mm(0.45), probability: 0.0001, verdict: "outside" })],
  });
  expect(flat([...worn, far])).toMatch(/^Crank is outside \(.*?\); 3 parts are worn but serviceable \(/);
});

test("a figure without a limit is told with the line that sets one", () => {
  const bare = item({ part: "rod bearing", label: "1", quantity: "clearance", value: mm(0.05) });
  const told = screen(
    assessed({ items: [bare], withoutLimit: [{ part: "rod bearing", quantity: "clearance" }] }),
    { width: 200 },
  ).join("\n");
  expect(told).toContain(
    'No limit recorded for rod bearing clearance. A limit from the manual, such as: sealtrend engine set tractor limits.rod-bearing.clearance.wear "up to 0.10mm"',
  );
});

test("what stops the job stands first, however little room there is, and a spoilt part is not serviceable", () => {
  const worn = item({
    part: "bore",
    label: "3",
    quantity: "diameter",
    value: mm(86.57),
    verdicts: [
      verdict({ kind: "new", high: mm(86.53), probability: 0.0001, verdict: "outside" }),
      verdict({ kind: "wear", high: mm(86.6) }),
    ],
  });
  const spoilt = [
    { part: "crack" as const, label: "head", date: "2026-03-02", text: "a crack in the head" },
    { part: "bore" as const, label: "3", date: "2026-03-02", text: "bore 3: nail catches" },
  ];
  const told = screen(assessed({ items: [worn], spoilt })).join("\n");
  expect(told.split("\n")[0]).toMatch(/^First of all: a crack in the head, bore 3 \(nail catches\)\. /);
  expect(told).not.toContain("worn but serviceable");
  const full = screen({ ...everything, spoilt }, { n: 28 });
  expect(full[0]).toMatch(/^First of all: a crack in the head, bore 3 \(nail catches\)\. /);
  expect(full.length).toBeLessThanOrEqual(24);
});

test("inside the wear limit and too close as new is not called inside as new", () => {
  const near = item({
    part: "pin",
    label: "1",
    quantity: "diameter",
    value: inches(2.248),
    unit: "in",
    verdicts: [
      verdict({
        kind: "new",
        low: inches(2.248),
        high: inches(2.249),
        probability: 0.5,
        verdict: "too-close-to-tell",
      }),
      verdict({ kind: "wear", low: inches(2.2475) }),
    ],
  });
  const told = screen(assessed({ items: [near] }));
  expect(told[0]).toBe("Pin 1 is inside the wear limit and too close to tell as new.");
  expect(told.join("\n")).toContain("usable: inside the wear limit, too close to tell as new");
  expect(told.join("\n")).not.toContain("inside new");
});

test("limits that are shifted by a size say so", () => {
  const bored = item({
    part: "bore",
    label: "1",
    quantity: "diameter",
    value: mm(87.08),
    state: "after machining",
    verdicts: [
      verdict({
        kind: "new",
        low: mm(87),
        high: mm(87.03),
        probability: 0.0001,
        verdict: "outside",
        limitFor: "limits for +0.50 mm",
      }),
    ],
  });
  expect(screen(assessed({ items: [bored] }))[0]).toBe(
    "Bore 1 is outside (diameter 87.08 mm, new 87.00 to 87.03, limits for +0.50 mm).",
  );
});

test("values without a limit are told however many there are", () => {
  const many = (["bore", "main", "pin", "rod bearing", "main bearing", "piston", "guide"] as const).flatMap(
    (part) =>
      labels(12).map((label) =>
        item({ part, label, quantity: "diameter", value: mm(50 + Number(label) / 100) }),
      ),
  );
  const withoutLimit = [...new Set(many.map(({ part }) => part))].map((part) => ({
    part,
    quantity: "diameter",
  }));
  const lines = screen(assessed({ items: many, withoutLimit }), { n: 12 });
  expect(lines.length).toBeLessThanOrEqual(24);
  expect(lines.join("\n")).toContain("bores 50.01 to 50.12 mm");
  expect(lines.join("\n").replace(/\s+/g, " ")).toContain("sealtrend engine set tractor limits.");
});

test("where all is inside the figures are shown as long as there is room", () => {
  const { items } = sixPins;
  const inside = items.map((one) => ({
    ...one,
    standing: "inside" as const,
    verdicts: one.verdicts.map((was) => ({ ...was, probability: 1, verdict: "inside" as const })),
  }));
  const findings = labels(6).map((label) => ({
    ...{ date: "2026-03-02", part: "rod bearing" as const, label, quantity: "appearance" },
    ...{ word: "embedded", state: "cleaned" as const },
  }));
  const lines = screen(
    assessed({
      items: inside,
      findings,
      withoutLimit: labels(9).map((quantity) => ({
        part: "bore" as const,
        quantity: `quantity ${quantity}`,
      })),
      work: labels(6).map((n) => ({ code: "rods" as const, text: `work ${n}`, why: "a figure", labels: [] })),
    }),
  );
  expect(lines.length).toBeLessThanOrEqual(24);
  expect(lines.join("\n")).toContain("thread clearance in  0.0015");
});

test("parts without a column are called inside only where they were measured", () => {
  const found = (missing: readonly string[]): string => {
    const waits = item({
      part: "bore",
      label: "2",
      quantity: "diameter",
      value: mm(86.1),
      verdicts: [verdict()],
      waits: true,
      standing: "waits",
    });
    // without a limit, so that it has no row: measured all the same
    const bare = item({ part: "bore", label: "1", quantity: "ridge", value: mm(0.1) });
    const counts = [
      { part: "bore", expected: 4, measured: 2, missing, beyond: [], from: "cylinders" },
    ] as const;
    const [block] = blocksOf(assessed({ items: [bare, waits], counts }), labels(4));
    return block === undefined
      ? ""
      : blockLines(block, { width: 80, units: undefined, shown: "needed" }).join(" ").replace(/\s+/g, " ");
  };
  expect(found([])).toContain("see check; the other bore: inside, or no limit");
  expect(found(["3", "4"])).toContain("see check; bore 1: inside, or no limit; bores 3 and 4: not measured");
});
