// Oiled readings that are added to a test without their gauge, and the gauge whose name or unit was left open. Readings invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { file, rowsOf } from "./entered.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");

const desk = async (): Promise<Desk> => {
  const made = newDesk();
  made.put("logbook/.keep", "");
  made.put(
    "logbook/gauges.csv",
    "gauge,kind,unit\nred,compression,psi\nblue,compression,bar\ndrip,leak-down,psi\n",
  );
  made.put("logbook/pump/engine.json", '{"cylinders": ["1", "2"], "ignition": "spark"}');
  await made.type(["enter", "pump", "--date", "2024-05-11", "--dry", "129 113", "--gauge", "red"]);
  return made;
};
const oiled = ["--wet", "131 126", "--oil", "5 5"];

test.each([
  ["--test", ["--test", "2024-05-11a", ...oiled, "--unit", "psi"]],
  ["--same-test, its unit by the gauge", ["--same-test", ...oiled]],
])("%s: the gauge of the dry readings is taken, and said", async (_, words) => {
  const pump = await desk();
  const { err, out } = await pump.type(["enter", "pump", ...words]);
  expect(flat(err)).toContain("no gauge was named: red is taken, which read the dry ones of 2024-05-11a");
  expect(rowsOf(pump).find(({ what }) => what === "wet")).toMatchObject({ gauge: "red", unit: "psi" });
  expect(out).not.toContain("next oil test");
});

test("another unit is another gauge: the rise is told, and that no cause counts it", async () => {
  const pump = await desk();
  const { err, out } = await pump.type([
    "enter",
    "pump",
    "--same-test",
    "--wet",
    "9.03 8.69",
    "--oil",
    "5 5",
    "--unit",
    "bar",
  ]);
  expect(err).not.toContain("no gauge was named");
  const said = flat(out);
  const mend = 'sealtrend amend pump --test 2024-05-11a --what wet --gauge red --because "one gauge"';
  expect(said).toContain(
    `It counts for no cause: dry by red, with oil by a gauge not named. If it was one gauge: ${mend}`,
  );
  expect(await pump.json("show", "pump")).toMatchObject({ oil: { byTwo: { dry: "red" } } });
});

test("the mend carried out has the rise counted", async () => {
  const pump = await desk();
  const plain = pump.text(file);
  pump.put(
    file,
    `${plain}${plain.split("\n")[1]?.replace(",dry,1,red,psi,129,113", ",wet,1,,psi,131,126") ?? ""}\n`,
  );
  expect((await pump.type(["show", "pump"])).out).toContain("It counts for no cause");
  await pump.type([
    "amend",
    "pump",
    "--test",
    "2024-05-11a",
    "--what",
    "wet",
    "--gauge",
    "red",
    "--because",
    "one gauge",
  ]);
  expect((await pump.type(["show", "pump"])).out).not.toContain("It counts for no cause");
});
