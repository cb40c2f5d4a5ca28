// Nothing was measured yet: the same tables, empty, to be filled in by hand, of as many parts as the engine has.

import { type Engine, countsToMeasure } from "@sealtrend/core/parts";
import type { PageCell, PageRow, PageSection, TableBlock } from "./page-model.ts";
import { left } from "./page-tables.ts";
import { kept } from "./page-words.ts";

const empty: PageCell = { text: "", role: "blank" };

const places = {
  bore: ["top thrust", "top axial", "middle thrust", "middle axial", "bottom thrust", "bottom axial"],
  main: ["front 0°", "front 90°", "rear 0°", "rear 90°"],
  pin: ["front 0°", "front 90°", "rear 0°", "rear 90°"],
} as const;

/** Rows for journals that the usual count does not foresee. */
const spares = ["spare", "spare"] as const;

export const emptySection = (engine: Engine): PageSection => {
  const counts = countsToMeasure(engine);
  const table = (part: keyof typeof places, name: string): TableBlock => {
    const count = counts.find((one) => one.part === part && one.quantity === "diameter");
    const isUsual = count?.from === "usual for the layout";
    const labels = [...(count?.missing ?? []), ...(isUsual ? spares : [])];
    const columns = [...places[part], ...(part === "bore" ? ["piston", "ring gap"] : []), "limit"];
    return {
      kind: "table",
      caption: `${name}${isUsual ? " (as many as usual: strike out or add)" : ""}; unit ________ instrument ________`,
      columns: [left(name.replace(/s$/, "")), left("Size"), ...columns.map(left)],
      rows: labels.flatMap((label) =>
        ["found", "finished"].map((kind, i): PageRow => ({
          cells: [kept(label), kind, ...columns.map(() => empty)],
          ...(i === 0 ? {} : { joins: "above" }),
        })),
      ),
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
