// Parts that go along with the castings, counted when given and when they come back: a line each, so that each has its count.
// @source handbook/teardown.md 6.5

import { type Engine, countsToMeasure } from "@sealtrend/core/parts";
import type { PageCell, PageSection, TableBlock } from "./page-model.ts";
import { left } from "./page-tables.ts";

const tick: PageCell = { text: "", role: "tick" };
const count: PageCell = { text: "", role: "blank" };

export const loosePartsSection = (engine: Engine): PageSection => {
  const names = namesFor(engine);
  const half = Math.ceil(names.length / 2);
  return {
    code: "loose-parts",
    heading: "Loose parts",
    blocks: [
      {
        kind: "beside",
        blocks: [
          table(names.slice(0, half), "Given and back"),
          table(names.slice(half), "Given and back, continued"),
        ],
      },
      {
        kind: "text",
        role: "small",
        text: "An orifice or restrictor that does not come back starves the head or the cam.",
      },
    ],
  };
};

const table = (names: readonly string[], caption: string): TableBlock => ({
  kind: "table",
  caption,
  columns: [left("Part"), left("Count"), left("Given"), left("Back")],
  rows: names.map((name) => ({ cells: [name, count, tick, tick] })),
});

const namesFor = (engine: Engine): readonly string[] => {
  const mains = countsToMeasure(engine).find(({ part }) => part === "main");
  const valves = engine.porting === "ports" ? [] : ["tappets in order", "valves in order"];
  return [
    "core plugs",
    "gallery plugs",
    "cam bushings",
    "small-end bushings",
    `main caps 1 to ${mains === undefined ? "..." : String(mains.expected)}`,
    "rod caps (numbered)",
    "cap bolts and nuts (reuse / new)",
    "studs",
    "dowels (deck, caps, bell housing)",
    "oil jets and nozzles",
    "orifices, restrictors (head oil feed)",
    "oil pump drive",
    "relief valve and spring",
    "thrust washers",
    "shims",
    "keys",
    ...valves,
    "pistons",
    "pins",
    "clips",
    "gaskets as pattern",
    "fasteners bag",
  ];
};
