// Real documents of show, history and enter against their published schemas, on all engines of the demo.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const engines = ["tractor", "van", "boat", "mill", "pump", "ultralight"];
const entry = (name: string) => (engine: string) => [name, engine] as const;

test.each(engines.flatMap((engine) => [entry("show")(engine), entry("history")(engine)]))(
  "%s %s --json is as its schema says",
  async (command, engine) => {
    const document = await newDesk().json(command, engine, "--logbook", demo);
    expect(misfits(document, schemaOf(command))).toEqual([]);
  },
);

test("every single test of the demo is as the schema says, void and doubtful ones too", async () => {
  const desk = newDesk();
  const schema = schemaOf("show");
  const codes = new Set<unknown>();
  for (const engine of engines) {
    const { tests, leakDown } = (await desk.json("history", engine, "--logbook", demo)) as {
      tests: { ids: string[] }[];
      leakDown?: { tests: { ids: string[] }[] };
    };
    for (const id of [...tests, ...(leakDown?.tests ?? [])].flatMap(({ ids }) => ids)) {
      const document = await desk.json("show", engine, "--test", id, "--logbook", demo);
      expect(misfits(document, schema)).toEqual([]);
      codes.add((document.trust as { code: string }).code);
    }
  }
  expect([...codes].sort()).toEqual(["doubtful", "trusted", "void"]);
});

test("enter --json is the document of show for the new test, with what was written", async () => {
  const desk = await deskWithPump();
  const entered = await desk.json(
    "enter",
    "pump",
    "--dry",
    "150 148 152 149",
    "--unit",
    "psi",
    "--altitude",
    "350m",
  );
  expect(misfits(entered, schemaOf("enter"))).toEqual([]);
  expect(entered.written).toEqual({ file: "logbook/pump/tests.csv", rows: 1 });
  const shown = await desk.json("show", "pump");
  expect({ ...entered, schema: shown.schema, written: undefined }).toEqual(shown);
});

test("an engine without a test has a history that says so", async () => {
  const document = await (await deskWithPump()).json("history", "pump");
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  expect(document).toMatchObject({ tests: [], cylinders: [] });
});

test("what is not known is absent: no null but in the columns of history, and no number that is none", async () => {
  const desk = newDesk();
  for (const engine of engines)
    for (const command of ["show", "history"]) {
      const { out } = await desk.type([command, engine, "--json", "--logbook", demo]);
      expect(out).not.toMatch(/NaN|Infinity|undefined/);
      const kept = out.replace(/"(?:contrasts|ratios|effects|corrected_kPa|held)": \[[^\]]*\]/g, "");
      expect(kept).not.toContain("null");
    }
});
