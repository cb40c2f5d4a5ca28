import { figureShapes, readTypedLine, startTyping, typingHelp } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { engine, told, typed } from "./sample.ts";

describe("the shapes that the prompt shows", () => {
  test("each can be typed as it stands, one after the other", () => {
    const { context } = typed(...typingHelp.map(({ example }) => example));
    expect(context).toMatchObject({ teardown: 2, by: "Ann", state: "cleaned", instrument: "bore-gauge" });
  });

  test.each(typingHelp)("$example", ({ kind, example }) => {
    const metric = { ...startTyping("2026-03-02"), length: "mm" } as const;
    const read = readTypedLine(example, metric, engine);
    expect(read.kind).toBe(kind === "setting" ? "context" : "measurements");
    if (read.kind === "measurements") expect(read.measurements).not.toEqual([]);
  });

  test.each(figureShapes)("$example", ({ example }) => {
    const read = readTypedLine(`bore 3: ${example}`, { ...startTyping("2026-03-02"), length: "mm" }, engine);
    expect(read.kind).toBe("measurements");
  });

  test("the housing stands in the order that its line says", () => {
    expect(typed("mm", "housing main 4: 67.01 67.00 67.01").measurements.map(told)).toEqual([
      "housing 4 main/45 bore 67.01 mm",
      "housing 4 main/90 bore 67 mm",
      "housing 4 main/135 bore 67.01 mm",
    ]);
  });

  test("none is wider than a screen of 80", () => {
    expect(typingHelp.filter(({ example, means }) => Math.max(example.length, means.length) > 78)).toEqual(
      [],
    );
  });
});
