// What `yard` reads of a CSV and what `import` brings of it into a logbook is the same. Readings invented.

import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";

const sheet = `engine,ignition,test,date,what,take,unit,c1,c2,c3,c4,set_aside,note
Old Baler,spark,2025-05-01a,2025-05-01,dry,1,psi,150,149,151,150,,
Old Baler,spark,2026-05-01a,2026-05-01,dry,1,psi,150,149,90,150,wrong adapter,
Thresher,compression,2026-05-01a,2026-05-01,dry,1,bar,28,28.2,,,,
Gap,spark,2026-05-01a,2026-05-01,dry,1,psi,,149,151,150,,
`;
const line = (text: string, id: string): Record<string, unknown> =>
  text
    .trim()
    .split("\n")
    .map((one) => JSON.parse(one) as Record<string, unknown>)
    .find(({ engine }) => engine === id) ?? {};

test("a test that is set aside counts in neither, and each engine fires as its rows say", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  desk.put("fleet.csv", sheet);
  const day = ["--as-of", "2026-06-01", "--json"];
  const before = (await desk.type(["yard", "fleet.csv", "--decide", ...day])).out;
  const { exit, out } = await desk.type(["import", "fleet.csv", "--write"]);
  expect([exit, out.includes("not read")]).toEqual([0, false]);
  const after = (await desk.type(["yard", ...day])).out;
  for (const [name, id] of [
    ["Old Baler", "old-baler"],
    ["Thresher", "thresher"],
    ["Gap", "gap"],
  ] as const) {
    const { engine: _, name: __, ...ofFile } = line(before, name);
    expect(line(after, id)).toMatchObject(ofFile);
  }
  expect(line(after, "old-baler")).toMatchObject({ last: "2025-05-01", worst: { standing: "even" } });
  expect(line(before, "Gap")).toMatchObject({ unread: ["1"], decision: { code: "test-again" } });
  const show = (await desk.type(["show", "gap", "--as-of", "2026-06-01"])).out;
  expect(show.replace(/\s+/g, " ")).toContain("read 1, which was never read");
  expect(desk.text("logbook/thresher/engine.json")).toContain('"ignition": "compression"');
});

test("what the sheet sets aside later is told of a test that is recorded, with the line that does it", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  desk.put("fleet.csv", sheet.replace("wrong adapter", ""));
  await desk.type(["import", "fleet.csv", "--write"]);
  desk.put("fleet.csv", sheet);
  const { out } = await desk.type(["import", "fleet.csv"]);
  expect(out.replace(/\s+/g, " ")).toContain("set_aside wrong adapter (recorded: none)");
  const mend = /sealtrend (amend old-baler [^\n]*)/.exec(out)?.[1] ?? "";
  const words = [...mend.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
  expect((await desk.type(words)).exit).toBe(0);
  expect(line((await desk.type(["yard", "--json"])).out, "old-baler")).toMatchObject({ last: "2025-05-01" });
});

test("an ignition that was typed and one that the sheet says are told where they differ; the mend is a line that works", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  desk.put("fleet.csv", sheet);
  const { out, err } = await desk.type(["import", "fleet.csv", "--ignition", "compression", "--write"]);
  const said = (out + err).replace(/\s+/g, " ");
  expect(said).toContain(
    "--ignition says compression, and the sheet says spark of old-baler: spark is taken",
  );
  expect(said).toContain("sealtrend engine set old-baler ignition compression");
  expect((await desk.type("engine set old-baler ignition compression".split(" "))).exit).toBe(0);
});
