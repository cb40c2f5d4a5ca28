// Real processes, all at once.

import { spawn } from "node:child_process";
import { join } from "node:path";
import { build } from "esbuild";
import { expect, test } from "vitest";

import { newPlace, type Place } from "./place.ts";

const driverOf = async (place: Place): Promise<string> => {
  const outfile = join(place.folder, "driver.mjs");
  const source = join(import.meta.dirname, "../../hard/driver.ts");
  await build({
    entryPoints: [source],
    outfile,
    bundle: true,
    conditions: ["@sealtrend/source"],
    platform: "node",
    format: "esm",
  });
  return outfile;
};

const run = (place: Place, driver: string, words: readonly string[]): Promise<string> =>
  new Promise((ended) => {
    const env = { ...process.env, XDG_STATE_HOME: place.state };
    const child = spawn(process.execPath, [driver, ...words], { env });
    let said = "";
    child.stdout.on("data", (data: Buffer) => (said += data.toString()));
    child.stderr.on("data", (data: Buffer) => (said += data.toString()));
    child.on("close", (code) => {
      ended(`${String(code)} ${said}`);
    });
  });

test("eight processes that append 50 rows each lose none, and no two rows get the same number", async () => {
  const place = newPlace();
  const driver = await driverOf(place);
  const names = ["a", "b", "c", "d", "e", "f", "g", "h"];
  const results = await Promise.all(
    names.map((name) => run(place, driver, ["burst", place.root, name, "50"])),
  );
  expect(results.filter((result) => !result.startsWith("0 "))).toEqual([]);
  const lines = place.text("pump/tests.csv").trimEnd().split("\n").slice(1);
  expect(lines).toHaveLength(400);
  expect(new Set(lines.map((line) => line.split(",")[0])).size).toBe(400);
  for (const name of names) expect(lines.filter((line) => line.includes(`,${name},`))).toHaveLength(50);
  expect([place.names(), place.names("pump")]).toEqual([["pump"], ["tests.csv"]]);
}, 180_000);

test("four that append, two that replace and an undo leave whole files", async () => {
  const place = newPlace();
  const driver = await driverOf(place);
  place.put("gauges.csv", "name,mark,value\nred,gauge,0\n");
  const work = [
    ...["a", "b", "c", "d"].map((mark) => ["enter", place.root, mark, "3"]),
    ...["x", "y"].map((mark) => ["amend", place.root, mark, mark]),
  ];
  const results = await Promise.all(work.map((words) => run(place, driver, words)));
  expect(results.filter((result) => result !== "0 saved\n")).toEqual([]);
  expect(place.text("pump/tests.csv").trimEnd().split("\n")).toHaveLength(13);
  const [, value] = /^red,gauge,(.)$/m.exec(place.text("gauges.csv")) ?? [];
  expect(
    place
      .text("pump/amendments.csv")
      .trimEnd()
      .endsWith(`,${value ?? ""}`),
  ).toBe(true);
  expect(await run(place, driver, ["undo", place.root])).toBe("0 saved\n");
}, 180_000);
