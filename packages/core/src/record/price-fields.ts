// The fields below `prices` of engine.json, by their dotted path.

import type { FieldKind } from "./field-kind.ts";

const works = ["topEnd", "reRing", "rebuild"] as const;
const jobs = ["headOff", "bottomOpen", "engineOut"] as const;

const price = (example: number): FieldKind => ({ kind: "price", example });
const share = (example: number): FieldKind => ({ kind: "number", least: 0, most: 1, example });
const days = (example: number): FieldKind => ({ kind: "number", least: 0, most: 1000, example });

const byWork = (name: string, field: FieldKind): Readonly<Record<string, FieldKind>> =>
  Object.fromEntries(works.map((work) => [`prices.${name}.${work}`, field]));

export const priceFields: Readonly<Record<string, FieldKind>> = {
  "prices.currency": { kind: "text", example: "EUR" },
  ...Object.fromEntries(jobs.map((job) => [`prices.jobs.${job}`, price(350)])),
  ...byWork("work", price(620)),
  ...byWork("daysNow", days(4)),
  ...byWork("daysLater", days(8)),
  "prices.day": price(10),
  "prices.test": price(15),
  "prices.runningPerYear": price(60),
  ...byWork("resale", price(200)),
  "prices.replacement": price(4000),
  ...byWork("redo", share(0.05)),
  "prices.spoil": share(0.2),
  "prices.caught": share(0.8),
};
