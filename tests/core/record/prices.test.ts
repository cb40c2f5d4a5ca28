// Prices, ownership and age of engine.json as typed values, and prices typed over them. Invented.

import { ownedForOf, readEngine, readPrice, withPrices } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const read = (more: object) =>
  readEngine(
    JSON.stringify({ cylinders: ["1", "2"], ignition: "spark", ...more }, null, 2),
    "engine.json",
    "pump",
  );

test("prices are read group by group, and the currency is a word for printing", () => {
  const prices = {
    currency: "EUR",
    jobs: { headOff: 350, bottomOpen: 250 },
    work: { topEnd: 400, reRing: 620.5, rebuild: 2600 },
    daysNow: { reRing: 4 },
    daysLater: { reRing: 8 },
    day: 10,
    test: 15,
    runningPerYear: 0,
    resale: { rebuild: 300 },
    replacement: 4000,
    redo: { reRing: 0.1 },
    spoil: 0.3,
    caught: 0.7,
  };
  expect(read({ prices }).engine?.prices).toEqual(prices);
});

test("an engine without prices has none, and a currency alone prices nothing", () => {
  expect(read({}).engine?.prices).toBeUndefined();
  expect(read({ prices: {} }).engine?.prices).toBeUndefined();
  expect(read({ prices: { currency: "EUR" } }).engine?.prices?.work).toEqual({});
});

test("a negative price and a text in its place are faults at their own line and column, each with a mend", () => {
  const { engine, problems } = read({ prices: { work: { reRing: -620, topEnd: "400 EUR" } } });
  expect(engine).toBeUndefined();
  expect(problems).toMatchObject([
    {
      code: "field-bad",
      line: 9,
      column: 7,
      found: "prices.work.reRing is -620",
      expected: "a price of 0 or more, the number alone",
      mend: "write what it costs as a number above 0; leave the line out where nobody knows",
    },
    {
      code: "field-bad",
      line: 10,
      mend: "write the number alone, without quotes; the currency stands once, in prices.currency",
    },
  ]);
});

test("a price under a name that is near is said, with the name that was meant", () => {
  expect(read({ prices: { work: { rering: 620 } } }).problems).toMatchObject([
    { code: "field-unknown", severity: "caution", line: 9, mend: "rename it reRing" },
  ]);
});

test.each([
  ["5y", { kind: "years", years: 5 }],
  ["5 years", { kind: "years", years: 5 }],
  ["2,5 y", { kind: "years", years: 2.5 }],
  ["for-good", { kind: "for-good" }],
  ["For good", { kind: "for-good" }],
  ["5", undefined],
  ["0y", undefined],
  ["forever", undefined],
  ["-5y", undefined],
])("%s of ownership", (typed, owned) => {
  expect(ownedForOf(typed)).toEqual(owned);
});

test("ownership that is neither is a fault with both ways to write it", () => {
  expect(read({ ownership: "5" }).problems).toMatchObject([
    { code: "field-bad", found: 'ownership is "5"', mend: 'write "5y" or "for-good"' },
  ]);
  expect(read({ ownership: "7 years" }).engine?.ownedFor).toEqual({ kind: "years", years: 7 });
});

test("when it was new, and the years its owner gives it, are kept", () => {
  expect(read({ renewed: "2004", yearsLeft: 12 }).engine).toMatchObject({ renewed: "2004", yearsLeft: 12 });
  expect(read({ renewed: "2004-02-30" }).problems).toHaveLength(1);
});

describe("a price typed on the command line", () => {
  test.each([
    ["work.reRing=620", { ok: true, price: { path: "work.reRing", value: 620 } }],
    ["day=12,5", { ok: true, price: { path: "day", value: 12.5 } }],
    ["redo.topEnd=0.1", { ok: true, price: { path: "redo.topEnd", value: 0.1 } }],
    ["work.rering=620", { ok: false, found: "path", path: "work.rering" }],
    ["currency=EUR", { ok: false, found: "path", path: "currency" }],
    ["work.reRing=-1", { ok: false, found: "value", path: "work.reRing" }],
    ["work.reRing=1,200", { ok: false, found: "value", path: "work.reRing" }],
    ["spoil=2", { ok: false, found: "value", path: "spoil" }],
    ["620", { ok: false, found: "no-sign", path: "620" }],
  ])("%s", (typed, read) => {
    expect(readPrice(typed)).toEqual(read);
  });

  test("goes over that of the file, and the later one wins", () => {
    const before = withPrices(undefined, [
      { path: "work.reRing", value: 620 },
      { path: "work.topEnd", value: 400 },
    ]);
    const after = withPrices(before, [
      { path: "work.reRing", value: 500 },
      { path: "day", value: 10 },
      { path: "day", value: 20 },
    ]);
    expect(after).toMatchObject({ work: { reRing: 500, topEnd: 400 }, day: 20 });
  });

  test("is refused where there is no such price", () => {
    expect(() => withPrices(undefined, [{ path: "work.oil", value: 1 }])).toThrow(RangeError);
  });
});
