// The examples of every command that does more than read the demo, typed as they stand in the help: on a fresh copy of the
// demo that is no demo any more, or where the table below says, after other lines.

import { cpSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { commands } from "sealtrend";
import { expect, test } from "vitest";
import { wordsTyped } from "../words-typed.ts";
import { type Desk, newDesk } from "./desk.ts";
import { readOnDemo } from "./examples-read.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));

/** A logbook of one's own with the demo's engines and gauges. */
const ownDesk = (): Promise<Desk> => {
  const desk = newDesk();
  cpSync(demo, join(desk.folder, "logbook"), { recursive: true });
  const book = desk.text("logbook/logbook.json");
  desk.put("logbook/logbook.json", book.replace('"demo": true', '"demo": false'));
  return Promise.resolve(desk);
};

const emptyDesk = (): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  return Promise.resolve(desk);
};

const after =
  (start: () => Promise<Desk>, ...lines: readonly string[]) =>
  async (): Promise<Desk> => {
    const desk = await start();
    for (const line of lines) {
      const { exit } = await desk.type(wordsTyped(`sealtrend ${line}`));
      expect([line, exit]).toEqual([line, 0]);
    }
    return desk;
  };

const withFile =
  (name: string, text: string, start = emptyDesk) =>
  async (): Promise<Desk> => {
    const desk = await start();
    desk.put(name, text);
    return desk;
  };

/** An engine whose one test was read with two gauges on one day. */
const twoGauges = after(
  emptyDesk,
  "gauge add red --kind compression --unit psi",
  "gauge add blue --kind compression --unit psi",
  "engine add pump --cylinders 4 --ignition spark",
  'enter pump --dry "150 148 149 151" --unit psi --gauge red --date 2026-05-03',
  'enter pump --dry "146 144 146 147" --unit psi --gauge blue --test 2026-05-03a',
);
const cheapo = after(
  emptyDesk,
  "gauge add cheapo --kind leak-down --unit psi --full-scale 100psi --regulated 80psi",
);

const sheet =
  "engine,date,what,unit,c1,c2\nbaler,13/05/2025,dry,psi,118,121\nbaler,14/05/2026,dry,psi,117,120\n";

const fleet =
  "engine,test,date,what,unit,c1,c2\nbaler,2026-05-13a,2026-05-13,dry,psi,118,121\npress,2026-05-14a,2026-05-14,dry,psi,117,120\n";

/** Where an example does not follow on the demo's engines. */
const elsewhere: Readonly<Record<string, () => Promise<Desk>>> = {
  demo: () => Promise.resolve(newDesk()),
  "engine add pump --cylinders": emptyDesk,
  "engine add pump --from": withFile("pump.json", '{ "cylinders": ["1", "2"], "ignition": "compression" }'),
  "gauge add": emptyDesk,
  "gauge calibrate cheapo": cheapo,
  "gauge compare": twoGauges,
  import: withFile("old.csv", sheet),
  "yard fleet.csv": withFile("fleet.csv", fleet),
  undo: after(ownDesk, 'note boat --what "oil use" --value 0.4L/1000km'),
};

const deskFor = (line: string): Promise<Desk> => {
  const typed = line.replace(/^.*?sealtrend /, "");
  const [, start] = Object.entries(elsewhere).find(([begins]) => typed.startsWith(begins)) ?? ["", ownDesk];
  return start();
};

const tried = commands.filter(({ name }) => !readOnDemo.includes(name) && name !== "teardown");
const lines = tried.flatMap(({ examples }) => examples);

test.each(lines)("the example `%s` does what it says", async (line) => {
  const desk = await deskFor(line);
  const elsewhereTyped = line.replace(/\/tmp\/\S+/, "engines"); // nothing outside the folder of the test
  const { exit, err } = await desk.type(wordsTyped(elsewhereTyped));
  expect([exit, err.includes("expected ")]).toEqual([0, false]);
});
