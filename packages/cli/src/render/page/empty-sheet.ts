// Nothing was measured yet: the same tables, empty, to be filled in by hand, of as many parts as the engine has.

import { type Engine, countsToMeasure } from "@sealtrend/core";
import type { PageCell, PageColumn, PageSection, TableBlock } from "./page-model.ts";
import { kept } from "./page-words.ts";

const empty: PageCell = { text: "", role: "blank" };

const places = {
  bore: ["top thrust", "top axial", "middle thrust", "middle axial", "bottom thrust", "bottom axial"],
  main: ["front 0", "front 90", "rear 0", "rear 90"],
  pin: ["front 0", "front 90", "rear 0", "rear 90"],
} as const;

export const emptySection = (engine: Engine): PageSection => {
  const counts = countsToMeasure(engine);
  const labelsOf = (part: string): { readonly labels: readonly string[]; readonly sure: string } => {
    const count = counts.find((one) => one.part === part && one.quantity === "diameter");
    return {
      labels: count?.missing ?? [],
      sure: count?.from === "usual for the layout" ? " (as many as usual: strike out or add)" : "",
    };
  };
  const table = (part: keyof typeof places, name: string): TableBlock => {
    const { labels, sure } = labelsOf(part);
    const columns = [
      ...places[part],
      ...(part === "bore" ? ["piston", "ring gap"] : []),
      "limit",
      "again",
      "finished",
    ];
    return {
      kind: "table",
      caption: `${name}${sure}; unit ___ instrument ___`.replaceAll("___", "________"),
      columns: [
        { name: name.replace(/s$/, ""), align: "left" },
        ...columns.map((column): PageColumn => ({ name: column, align: "left" })),
      ],
      rows: labels.map((label) => ({ cells: [kept(label), ...columns.map(() => empty)] })),
    };
  };
  return {
    code: "measured",
    heading: "Measured as found",
    blocks: [
      {
        kind: "text",
        text: "Nothing was measured before this engine came in. Please measure, write it here, and ring before cutting.",
      },
      table("bore", "Bores"),
      { kind: "beside", blocks: [table("main", "Mains"), table("pin", "Pins")] },
      {
        kind: "blanks",
        items: [
          "End play",
          "Runout",
          "Head flatness",
          "Deck flatness",
          "Guides",
          "Cracks looked for, how",
        ].map((name) => ({ name })),
      },
    ],
  };
};
