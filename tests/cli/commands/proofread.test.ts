// proofread on a logbook that is broken in every file: each fault with its place, found by counting in the text below, and a mend.

import { cpSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { proofreadText } from "../../../packages/cli/src/render/proofread.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import {
  boat,
  boatJson,
  boatTests,
  mendPlace,
  notesHeader,
  servicesHeader,
  testsHeader,
} from "./mend-place.ts";

const broken = {
  "logbook.json": '{\n  "schema": "sealtrend/logbook@1",\n  "homeAltitude_m": "350",\n  "unit": "psi"\n}\n',
  "gauges.csv":
    "gauge,kind,unit,full_scale,class\nred,compresion,psi,300,2.5\nblue,compression,psi,3OO,2.5\n",
  "gauges (1).csv": "gauge,kind\n",
  "boat/engine.json":
    '{\n  "cylinders": ["1", "2", "3", "4"],\n  "ignition": "spark",\n  "boar": "86mm",\n  "cycle": "two strokes"\n}\n',
  "boat/tests.csv": boatTests,
  "pump/engine.json": boatJson,
  "pump/tests.csv": [
    testsHeader,
    "2026-05-02a,2026-05-02,640,dry,1,red,psi,126,125,111,14O,350,,,,,,,me,,",
    "2026-05-02a,2026-05-02,640,dry,1,red,psi,126,125,111,140,350,,,,,,,me,,",
    "2026-05-02a,2026-05-02,641,wet,1,red,psi,126,125,111,140,360,,,,,,,me,,=note",
    "2026-05-03a,03/05/2026,700,dry,1,,,126,125,111,140,,,,,,,,me,,",
    '2026-05-04a,2026-05-04,700,dry,1,red,psi,12"6,125,111,140,,,,,,,,me,,',
    "2026-05-05a,2026-05-05,700,dry,1,red,psi,126,125,111,140",
    "2026-05-06a,2026-05-06,650,drry,1,red,psi,126,125,111,140,,,,,,,,me,,",
    "",
  ].join("\n"),
  "pump/services.csv": `${servicesHeader}\n2026-05-02,640,valvejob,,,,\n2026-05-02,640,plugs,7,,,\n`,
  "pump/notes.csv": Buffer.from(`${notesHeader}\n2026-05-02,,smoke,pink,,,,gr\u00fcn\n`, "latin1"),
  "pump/measurements.csv": "date,part,value\n",
  "pump/amendments.csv": "when,file,row,column,old,new\n",
  "pump/tests - Copy.csv": "",
  "Old Boat/engine.json": boatJson,
  "saw/tests.csv": "test,date,what,c1,altitude\n",
};

interface Found {
  readonly code: string;
  readonly severity: string;
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly mend: string;
}
const documentOf = (json: unknown) =>
  json as { readonly schema: string; readonly files: readonly string[]; readonly problems: readonly Found[] };

test("proofread names every fault of every file, with its place and a mend", async () => {
  const place = mendPlace(broken);
  const before = place.picture();
  const { exit, json } = await place.run(["proofread", "--json"]);
  expect(exit).toBe(1);
  const { files, problems } = documentOf(json());
  expect(misfits(json(), schemaOf("proofread"))).toEqual([]);
  expect(files).toHaveLength(12);
  const lines = problems.map(({ code, severity, file = "", line, column }) =>
    [
      severity === "error" ? "" : "(",
      code,
      " ",
      [file.replace("logbook/", ""), line, column].filter((part) => part !== undefined).join(":"),
    ].join(""),
  );
  expect(lines).toEqual([
    "engine-id Old Boat",
    "(field-unknown boat/engine.json:4:3",
    "field-bad boat/engine.json:5:3",
    "(file-copy gauges (1).csv",
    "(column-unknown gauges.csv:1:28",
    "word-unknown gauges.csv:2:5",
    "number-bad gauges.csv:3:22",
    "field-bad logbook.json:3:3",
    "(field-unknown logbook.json:4:3",
    "column-missing pump/amendments.csv:1:1",
    "column-missing pump/measurements.csv:1:1",
    "(file-windows-1252 pump/notes.csv",
    "note-value pump/notes.csv:2:19",
    "word-unknown pump/services.csv:2:16",
    "cylinders-bad pump/services.csv:3:22",
    "(file-copy pump/tests - Copy.csv",
    "number-bad pump/tests.csv:2:54",
    "test-disagrees pump/tests.csv:4:24",
    "test-disagrees pump/tests.csv:4:58",
    "(text-formula pump/tests.csv:4:72",
    "date-bad pump/tests.csv:5:13",
    "unit-missing pump/tests.csv:5:35",
    "quote-stray pump/tests.csv:6:44",
    "(row-short pump/tests.csv:7:57",
    "word-unknown pump/tests.csv:8:28",
    "engine-missing saw/engine.json",
    "(column-unknown saw/tests.csv:1:19",
  ]);
  expect(problems.filter(({ mend }) => mend === "")).toEqual([]);
  expect(place.picture()).toEqual(before);
});

test("The screen shows the line with a mark under the fault, and ends with the count", async () => {
  const place = mendPlace({
    "pump/engine.json": boatJson,
    "pump/tests.csv": `${testsHeader}\n2026-05-02a,2026-05-02,640,dry,1,red,psi,126,125,111,14O,350,,,,,,,me,,\n`,
  });
  const { exit, out, err } = await place.run(["proofread"]);
  expect([exit, err]).toEqual([1, ""]);
  const lines = out.split("\n");
  const at = lines.findIndex((line) => line.includes("126,125,111,14O"));
  expect(lines[0]).toContain("logbook/pump/tests.csv:2:54");
  expect(lines[at + 1]?.indexOf("^^^")).toBe(lines[at]?.indexOf("14O"));
  expect(out).toContain("write 140");
  expect(lines.slice(-2)).toEqual(["1 fault in 2 files; nothing was changed.", ""]);
});

test("A logbook without a fault is said to be so", async () => {
  const { exit, out } = await boat().run(["proofread"]);
  expect([exit, out]).toEqual([0, "no fault in 4 files; nothing was changed.\n"]);
});

test("Cautions alone are no error", async () => {
  const place = boat();
  place.put("boat/tests.csv~", "");
  const { exit, out } = await place.run(["proofread"]);
  expect(exit).toBe(0);
  expect(out).toContain("caution: logbook/boat/tests.csv~ looks like a copy of tests.csv");
  expect(out).toContain("no fault and 1 caution in 4 files; nothing was changed.");
});

test("A fault that repeats is counted after a few, and --why shows them all", async () => {
  const rows = Array.from(
    { length: 9 },
    (_, i) => `2026-05-0${String(i + 1)}a,2026-05-0${String(i + 1)},,dry,1,red,psi,126,125,111,14O,,,,,,,,,,`,
  );
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": [testsHeader, ...rows, ""].join("\n"),
  });
  const short = await place.run(["proofread"]);
  expect(short.out).toContain("6 more like it, lines 5 to 10");
  const long = await place.run(["proofread", "--why"]);
  expect(long.out.match(/write 140/g)).toHaveLength(9);
  expect(long.out).toContain("9 faults in 2 files");
});

test("Faults of one kind in different columns are each shown; only those of one column are counted together", async () => {
  const row = (i: number): string => `t${String(i)},leak-down,psi,20,1.5,2`;
  const rows = Array.from({ length: 8 }, (_, i) => row(i));
  const place = mendPlace({
    "gauges.csv": ["gauge,kind,unit,restrictor_mm,restrictor_cd,restrictor_tol_mm", ...rows, ""].join("\n"),
  });
  const { out } = await place.run(["proofread"]);
  for (const of of ["restrictor bore in mm", "discharge coefficient", "tolerance of the bore in mm"])
    expect(out.match(new RegExp(`is out of range for ${of}`, "g"))).toHaveLength(3);
  expect(out.match(/5 more like it, lines 5 to 9/g)).toHaveLength(3);
});

test("A comparison of gauges that lies ahead is a fault, at its cell", async () => {
  const place = mendPlace({
    "gauges.csv":
      "gauge,kind,link_to,link_factor,link_u,link_date\nred,compression,,,,\nblack,compression,red,1.03,0.01,2090-01-01\n",
  });
  const { exit, out } = await place.run(["proofread"]);
  expect([exit, out]).toEqual([1, expect.stringContaining("gauges.csv:3:33 the date 2090-01-01 lies ahead")]);
});

test("A column that is not read but nearly has a name of ours is named once for each it may mean", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": "test,date,what,unit,c1,c2,c3,c4,altitude,weather\n",
  });
  const { exit, out } = await place.run(["proofread"]);
  expect(exit).toBe(0);
  expect(out).toContain("rename it altitude_m or altitude_ft if that is meant, or leave it");
  expect(out).toContain("no fault and 1 caution in 2 files");
});

test("One engine is examined with the files it shares", async () => {
  const place = mendPlace(broken);
  const { files } = documentOf((await place.run(["proofread", "boat", "--json"])).json());
  expect(files.map((file) => file.replace("logbook/", ""))).toEqual([
    "logbook.json",
    "gauges.csv",
    "boat/engine.json",
    "boat/tests.csv",
  ]);
  const unknown = await place.run(["proofread", "baot"]);
  expect([unknown.exit, unknown.err]).toEqual([2, expect.stringContaining("did you mean boat?")]);
});

test("A file that holds no text, or a link to nothing, stops no other file from being examined", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": "test\0,date",
    "boat/notes.csv": `${notesHeader}\n2026-05-02,,smoke,pink,,,,\n`,
    "gauges.csv/inside": "",
  });
  const { exit, json } = await place.run(["proofread", "--json"]);
  expect(exit).toBe(1);
  expect(documentOf(json()).problems.map(({ code }) => code)).toEqual([
    "note-value",
    "file-zero-bytes",
    "file-not-regular",
  ]);
});

test("A named logbook that is not there is exit 3, and the demo is read without a fault", async () => {
  const place = mendPlace({});
  expect((await place.run(["proofread", "--logbook", "elsewhere"])).exit).toBe(3);
  cpSync(fileURLToPath(new URL("../../../data/demo/", import.meta.url)), `${place.folder}/demo`, {
    recursive: true,
  });
  const { exit, out } = await place.run(["proofread", "--logbook", "demo"]);
  expect([exit, out]).toEqual([0, expect.stringMatching(/^no fault in \d+ files; nothing was changed\.\n$/)]);
});

test("Where an interrupted command was taken back first, nothing else was changed", () => {
  const options = { width: 80, detail: "folded", logbook: "put in order" } as const;
  expect(proofreadText({ files: ["a", "b"], faults: [] }, options)).toBe(
    "no fault in 2 files; nothing else was changed.\n",
  );
});

test("what was measured on the engine taken apart is read row by row", async () => {
  const rows = [
    "date,part,label,at,quantity,value,unit,instrment",
    "2026-05-02,bore,1,top/thrust,diameter,86.62,mm,bore-gauge",
    "2026-05-02,bore,9,top/thrust,diameter,+86.62,mm,bore-gauge",
    "2099-05-02,crank,,,end play,0.15,mm,dial",
    "",
  ].join("\n");
  const place = mendPlace({ "pump/engine.json": boatJson, "pump/measurements.csv": rows });
  const { problems } = documentOf((await place.run(["proofread", "--json"])).json());
  expect(problems.map(({ code, line, column }) => `${code} ${String(line)}:${String(column)}`)).toEqual([
    "column-unknown 1:40",
    "label-bad 3:17",
    "measure-bad 3:39",
    "date-ahead 4:1",
  ]);
});

test("what the owner has beside the gauges is a name that is known", async () => {
  const place = mendPlace({
    "logbook.json": '{ "demo": false, "tools": ["borescope"] }',
    "pump/engine.json": boatJson,
  });
  expect(documentOf((await place.run(["proofread", "--json"])).json()).problems).toEqual([]);
});
