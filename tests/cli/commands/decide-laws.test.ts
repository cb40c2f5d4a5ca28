// What must not change a decision, and what must.

import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { cases, decided, screen } from "./decide-desk.ts";
import { newDesk } from "./desk.ts";

const open = "--opened pistons-in --engine-out";

test("money has no unit: all prices a hundredfold change no verdict, no chance and no margin", async () => {
  const prices = {
    "jobs.headOff": 350,
    "jobs.bottomOpen": 250,
    "jobs.engineOut": 600,
    "work.topEnd": 400,
    "work.reRing": 620,
    "work.rebuild": 2600,
    test: 15,
  };
  const typed = Object.entries(prices).map(([name, price]) => `${name}=${String(100 * price)}`);
  for (const line of [`healthy ${open}`, `healthy ${open} --own for-good`, `falling ${open}`]) {
    const one = await decided(line);
    const many = await decided(`${line} --price ${typed.join(" ")}`);
    expect([many.decision.code, many.basis, many.margin]).toEqual([one.decision.code, one.basis, one.margin]);
    expect(many.breakEven?.probability).toBeCloseTo(one.breakEven?.probability ?? NaN, 9);
    expect(many.comparison?.difference).toBeCloseTo(100 * (one.comparison?.difference ?? NaN), 4);
  }
});

test.each(["psi", "bar", "kgf/cm2", "metric"])(
  "--units %s prints other units and decides the same",
  async (units) => {
    for (const line of [`healthy ${open}`, "valve", "station"])
      expect(await decided(`${line} --units ${units}`)).toEqual(await decided(line));
  },
);

test("a limit is printed in the unit asked for", async () => {
  // 1000 kPa x 1.061 in psi: 153.9
  expect(await screen(`healthy ${open} --units psi --why`)).toMatch(/turns at 154 psi/);
});

test("the order of rows in notes.csv and tests.csv changes nothing", async () => {
  const desk = newDesk();
  cpSync(cases, join(desk.folder, "logbook"), { recursive: true });
  const ask = (engine: string) => desk.json("decide", engine, "--as-of", "2026-11-25");
  for (const engine of ["knocking", "thirsty", "healthy"]) {
    const before = await ask(engine);
    for (const name of ["notes.csv", "tests.csv"]) {
      const path = join(desk.folder, "logbook", engine, name);
      const [head = "", ...rows] = readFileSync(path, "utf8").trimEnd().split("\n");
      writeFileSync(path, `${[head, ...rows.reverse()].join("\n")}\n`);
    }
    expect(await ask(engine)).toEqual(before);
  }
});

test("what would change the verdict does change it just beyond, and not just before", async () => {
  const line = `falling ${open}`;
  const { flips, decision } = await decided(line);
  const years = flips.find(({ input }) => input === "horizon")?.at ?? 0;
  expect(decision.code).toBe("re-ring");
  const word = async (owned: number): Promise<string> =>
    (await decided(`${line} --own ${owned.toFixed(3)}y`)).decision.code;
  expect([await word(years * 0.995), await word(years * 1.005)]).toEqual(["test-again", "re-ring"]);
  expect(flips.find(({ input }) => input === "horizon")?.to).toBe("test-again");
});

test("a dearer way in later makes acting now worth more", async () => {
  const difference = async (price: number): Promise<number> =>
    (await decided(`healthy ${open} --price jobs.engineOut=${String(price)}`)).comparison?.difference ?? NaN;
  expect(await difference(1200)).toBeGreaterThan(await difference(600));
});

test("prices alone never make work needed", async () => {
  const { basis, decision } = await decided(`healthy ${open} --price work.reRing=1 work.rebuild=1`);
  expect(basis).not.toBe("needed");
  expect(decision.code).not.toBe("rebuild");
});
