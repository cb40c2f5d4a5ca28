// Whatever stands in a cell of gauges.csv, a command answers or names the cell: none fails inside.

import { gaugeColumns } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { deskWithPump } from "./desk.ts";

const sound: Readonly<Record<string, string>> = {
  gauge: "X",
  kind: "leak-down",
  unit: "psi",
  full_scale: "100",
  class_percent: "1.6",
  division: "1",
  reads_high: "1",
  restrictor_mm: "1.0",
  restrictor_length_mm: "3",
  restrictor_cd: "0.8",
  regulated: "80",
  known_holes: "1.0mm:66psi",
  restrictor_tol_mm: "0.02",
  link_to: "Y",
  link_factor: "1.1",
  link_u: "0.01",
  link_date: "2026-05-03",
  hose_cm3: "",
};
const numeric = Object.keys(sound).filter(
  (name) => !["gauge", "kind", "unit", "link_to", "link_date"].includes(name),
);
const odd = ["-80psi", "-5", "0", "0.0001", "99999", "80bar", "1mm:0psi", "x"];
const lines = [
  ["show", "pump"],
  ["history", "pump"],
  ["restate", "--gauge", "X", "--read", "60psi", "--to-restrictor", "1.2mm", "--to-regulated", "80psi"],
  ["gauge", "calibrate", "X", "--hole", "1.25mm:55psi"],
  ["gauge", "compare", "pump"],
  ["proofread"],
] as const;

const rowOf = (cells: Readonly<Record<string, string>>): string =>
  gaugeColumns
    .map((name) => (cells[name]?.includes(",") === true ? `"${cells[name]}"` : (cells[name] ?? "")))
    .join(",");

test.each(numeric)("no text in %s makes a command fail inside", async (column) => {
  const desk = await deskWithPump();
  const header = "test,date,what,take,gauge,unit,c1,c2,c3,c4";
  const tests = [
    "2026-05-03a,2026-05-03,leak-down,1,X,,70,60,65,72",
    "2026-05-03a,2026-05-03,leak-down,1,Y,,71,61,66,73",
  ];
  desk.put("logbook/pump/tests.csv", [header, ...tests, ""].join("\n"));
  const put = (...rows: readonly Readonly<Record<string, string>>[]): void => {
    desk.put("logbook/gauges.csv", [gaugeColumns.join(","), ...rows.map(rowOf), ""].join("\n"));
  };
  put(sound, { gauge: "Y", kind: "leak-down", unit: "psi" });
  for (const line of lines) expect([line[0], (await desk.type(line)).err]).toEqual([line[0], ""]);
  for (const text of odd)
    for (const kind of ["leak-down", "compression"]) {
      put({ ...sound, kind, [column]: text }, { gauge: "Y", kind, unit: "psi" });
      for (const line of lines) {
        const { exit, err } = await desk.type(line);
        expect([line[0], kind, text, [0, 1, 2].includes(exit), err]).toEqual([
          line[0],
          kind,
          text,
          true,
          err,
        ]);
      }
    }
});
