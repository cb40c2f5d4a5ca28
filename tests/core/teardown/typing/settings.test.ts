import { readTypedLine, startTyping } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { engine, typed } from "./sample.ts";

const bore = "bore 3: 86.62mm";
const said = (line: string) => {
  const one = readTypedLine(line, startTyping("2026-03-02"), engine);
  return one.kind === "context" ? one.text : one.kind;
};

test("every line that sets something says back what holds", () => {
  const lines =
    "mm,in,unit th,set 86.50mm,set off,with bore gauge 0.01mm,with off,state Cleaned,by Ann,by off,teardown 2,date 2026-04-01,at 75,at off";
  expect(lines.split(",").map(said)).toEqual([
    "figures without a unit are in mm",
    "figures without a unit are in inches",
    "figures without a unit are in th",
    "figures with a sign count from 86.50 mm",
    "figures are whole sizes again",
    "measured with bore-gauge, read to 0.01 mm",
    "no instrument named",
    "state cleaned",
    "measured by Ann",
    "measured by nobody named",
    "teardown 2",
    "date 2026-04-01",
    "along the straightedge every 75 mm",
    "no step along the straightedge",
  ]);
});

test("what was set stands in every row behind it", () => {
  const lines = ["teardown 2", "date 2026-04-01", "state after machining", "by: Ann Miller", bore];
  expect(typed(...lines).measurements[0]).toMatchObject({
    teardown: 2,
    date: "2026-04-01",
    state: "after machining",
    by: "Ann Miller",
  });
});

describe("the instrument", () => {
  const instrument = (...lines: string[]) =>
    typed("mm", ...lines).measurements.map(({ instrument: name, resolution, written }) =>
      [name, written.resolution, resolution?.toFixed(9)].join(" ").trim(),
    );

  test("holds for what it can measure, with its resolution in the unit of the row", () => {
    expect(instrument("with bore gauge 0.01", "bore 3: 86.62")).toEqual(["bore-gauge 0.01 0.000010000"]);
    expect(instrument("with micrometer 0.0001 in", "pin 3: 57.10")).toEqual([
      "micrometer 0.00254 0.000002540",
    ]);
    expect(instrument('with "Ann\'s old gauge"', "bore 3: 86.62")).toEqual(["Ann's old gauge"]);
  });

  test("that cannot measure such a thing gives way to the only one that can, or is left open", () => {
    const lines = ["ring gap 3: 0.35", "rod bearing 2: 0.05", "main bearing 4: wiped", "pin 3: 57.10"];
    expect(instrument("with bore gauge 0.01", ...lines)).toEqual(["feeler", "thread", "eye", ""]);
    expect(instrument("with micrometer 0.01", "bore 3: 86.62", "valve 3in: 1.2")).toEqual([
      "",
      "micrometer 0.01 0.000010000",
    ]);
    expect(instrument("with dial indicator 0.01", "end play: 0.15", "bore 3: 86.60..86.62")).toEqual([
      "dial 0.01 0.000010000",
      "feeler",
    ]);
    expect(instrument("with burette 0.2", "chamber 3: 42.5ml")).toEqual([""]);
  });

  test("of the owner's own is named in quotes, with what it is read to or without", () => {
    expect(instrument('with "the old ring" 0.05', "bore 3: 86.62")).toEqual([
      "the old ring 0.05 0.000050000",
    ]);
    expect(instrument("with “the old ring”", "bore 3: 86.62")).toEqual(["the old ring"]);
  });

  test("may be said as instrument too", () => {
    expect(instrument("instrument bore gauge 0.01", "bore 3: 86.62")).toEqual([
      "bore-gauge 0.01 0.000010000",
    ]);
  });

  test("a thread keeps its colour and what its card is read to", () => {
    expect(instrument("with thread green 0.0005in", "rod bearing 2: 0.05")).toEqual([
      "thread green 0.0127 0.000012700",
    ]);
    expect(instrument("with thread", "rod bearing 2: 0.05")).toEqual(["thread"]);
  });
});
