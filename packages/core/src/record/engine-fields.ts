// Every field of engine.json: where it stands, what it may hold. One table, used to read, to set and to explain.

import { byName } from "../problem/index.ts";
import { type Dimension, unitsOf } from "../quantity/index.ts";
import type { FieldKind } from "./field-kind.ts";
import { priceFields } from "./price-fields.ts";

const text: FieldKind = { kind: "text" };
const yesNo: FieldKind = { kind: "yes-no" };
const word = (...words: string[]): FieldKind => ({ kind: "word", words, also: byName({}) });
const number = (least: number, most: number, example: number): FieldKind => ({
  kind: "number",
  least,
  most,
  example,
});
const quantity = (dimension: Dimension, example: string): FieldKind => ({
  kind: "quantity",
  dimension,
  example,
});
const count = (most: number, example: number): FieldKind => ({
  kind: "number",
  least: 1,
  most,
  example,
  whole: true,
});

/** The fields of engine.json by their dotted path. */
export const engineFields = byName<FieldKind>({
  schema: word("sealtrend/engine@1"),
  name: text,
  use: word("road", "farm", "stationary", "boat", "motorcycle", "aircraft", "other"),
  remote: yesNo,
  cylinders: { kind: "labels" },
  banks: { kind: "banks" },
  sharedGasket: yesNo,
  firingOrder: { kind: "labels" },
  cycle: word("four-stroke", "two-stroke"),
  porting: word("valves", "ports", "ports-and-exhaust-valve"),
  ignition: {
    kind: "word",
    words: ["spark", "compression", "unknown"],
    also: byName({ diesel: "compression", petrol: "spark", gas: "spark", gasoline: "spark" }),
  },
  cooling: word("liquid", "air"),
  meter: word("h", "km", "mi"),
  homeAltitude_m: number(-500, 6_000, 350),
  compressionRelease: word("none", "automatic", "manual"),
  "wetTest.allowed": yesNo,
  "wetTest.oil_ml": number(0, 50, 5),
  "wetTest.source": text,
  "leakDownTest.allowed": yesNo,
  "leakDownTest.source": text,
  "geometry.bore": quantity("length", "86mm"),
  "geometry.stroke": quantity("length", "86mm"),
  "geometry.rod": quantity("length", "143mm"),
  "geometry.compressionRatio": number(1.01, 40, 8.5),
  "geometry.intakeCloses": quantity("angle", "60deg"),
  "layout.mains": count(60, 5),
  "layout.pins": count(28, 4),
  "layout.numberedFrom": text,
  "limits.compression.new": quantity("pressure", "31bar"),
  "limits.compression.minimum": quantity("pressure", "26bar"),
  "limits.compression.difference": quantity("pressure", "3bar"),
  "limits.compression.lowestToHighest": number(0.05, 1, 0.75),
  "limits.compression.speed": { kind: "range", dimension: "speed", example: "250rpm", range: "250-400rpm" },
  "limits.compression.source": text,
  "limits.leakDown.lost": number(0, 1, 0.25),
  "limits.leakDown.source": text,
  "limits.clearances": {
    kind: "clearances",
    example:
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 0.1], "unit": "mm", "source": "manual p. 62" }]',
  },
  "limits.offered": { kind: "offered", example: '{ "bore": { "unit": "mm", "sizes": [0.25, 0.5] } }' },
  crankingCurve: {
    kind: "curves",
    example: '[{ "gauge": "red", "P0": "3400kPa", "u_ln": 0.05, "source": "two speeds" }]',
  },
  "correction.basis": word("pressure", "density"),
  "correction.temperatureExponent": number(0, 1, 0.25),
  ...priceFields,
  ownership: { kind: "ownership" },
  renewed: { kind: "since" },
  yearsLeft: number(0, 100, 12),
});

/** What a field expects, in words. */
export const expectation = (field: FieldKind): string => {
  switch (field.kind) {
    case "text":
      return "text";
    case "yes-no":
      return "true or false";
    case "word":
      return `one of ${field.words.join(", ")}`;
    case "number":
      return `a ${field.whole === true ? "whole " : ""}number from ${String(field.least)} to ${String(field.most)}`;
    case "quantity":
      return `a quantity such as "${field.example}" (${unitsOf(field.dimension).join(", ")})`;
    case "range":
      return `a quantity such as "${field.example}" or a range "${field.range}" (${unitsOf(field.dimension).join(", ")})`;
    case "labels":
      return 'labels of up to 4 letters or digits such as ["1", "2", "3", "4"], 1 to 28 of them, each once';
    case "banks":
      return 'rows of labels along each head, such as [["1", "2"], ["3", "4"]]';
    case "price":
      return "a price of 0 or more, the number alone";
    case "ownership":
      return "5y for five years (1 month to 100 years), or for-good";
    case "since":
      return "a year such as 2004, or a day such as 2004-05-01";
    case "curves":
    case "clearances":
    case "offered":
      return field.example;
  }
};

/** A value as a person would type it. */
export const typedExample = (field: FieldKind): string => {
  switch (field.kind) {
    case "text":
      return field.example ?? "workshop manual p. 31";
    case "yes-no":
      return "true";
    case "word":
      return field.words[0] ?? "";
    case "labels":
      return "1 2 3 4";
    case "banks":
      return "1 2 / 3 4";
    case "ownership":
      return "5y";
    case "since":
      return "2004";
    case "number":
    case "price":
    case "quantity":
    case "range":
    case "curves":
    case "clearances":
    case "offered":
      return String(field.example);
  }
};
