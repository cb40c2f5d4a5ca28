import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { spark, type SparkPoint } from "../../../packages/cli/src/render/spark.ts";
import { displayWidth } from "../../../packages/cli/src/render/width.ts";

const scale = { from: 2010, to: 2020, low: 0, high: 8, columns: 11, unicode: true };
const blocks = "▁▂▃▄▅▆▇█";

describe("a course in one line", () => {
  test("the eight blocks stand for eight equal parts of the scale, from low to high", () => {
    const points = [...blocks].map((_, i) => ({ x: 2010 + i, y: i + 0.5 }));
    expect(spark({ ...scale, points })).toBe("▁▂▃▄▅▆▇█   ");
    expect(spark({ ...scale, points, unicode: false })).toBe("12345678   ");
  });

  test("a test stands at its date; between tests a dot says that nobody measured", () => {
    const points = [
      { x: 2010, y: 8 },
      { x: 2012, y: 4 },
      { x: 2018, y: 0 },
    ];
    expect(spark({ ...scale, points })).toBe("█·▅·····▁  ");
    expect(spark({ ...scale, points, unicode: false })).toBe("8.5.....1  ");
  });

  test("a test without a reading of this cylinder leaves a hole", () => {
    for (const y of [undefined, null, NaN, Infinity])
      expect(
        spark({
          ...scale,
          points: [
            { x: 2010, y: 8 },
            { x: 2013, y },
            { x: 2016, y: 8 },
          ],
        }),
      ).toBe("█·· ··█    ");
  });

  test("tests closer than a column are moved apart so that each stays visible", () => {
    const points = [2010, 2010, 2010, 2020, 2020].map((x, i) => ({ x, y: i * 2 }));
    expect(spark({ ...scale, points })).toBe("▁▃▅······▇█");
  });

  test("values beyond the scale show as its ends", () => {
    expect(
      spark({
        ...scale,
        points: [
          { x: 2010, y: -50 },
          { x: 2011, y: 1e9 },
        ],
      }),
    ).toBe("▁█         ");
  });

  test("a scale without height and a span without length still draw", () => {
    expect(spark({ ...scale, low: 5, high: 5, points: [{ x: 2010, y: 5 }] })).toBe("▄          ");
    expect(spark({ ...scale, from: 2015, to: 2015, points: [{ x: 2015, y: 8 }] })).toBe("     █     ");
    expect(spark({ ...scale, points: [] })).toBe(" ".repeat(11));
  });

  test("a higher reading never stands lower", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), fc.double({ noNaN: true }), (a, b) => {
        const draw = (y: number, unicode: boolean) =>
          spark({ ...scale, columns: 1, points: [{ x: 2015, y }], unicode });
        fc.pre(Number.isFinite(a) && Number.isFinite(b));
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(blocks.indexOf(draw(low, true))).toBeLessThanOrEqual(blocks.indexOf(draw(high, true)));
        expect(Number(draw(low, false))).toBeLessThanOrEqual(Number(draw(high, false)));
      }),
    );
  });

  test("the line has its columns and shows every reading that there is room for", () => {
    const point = fc.record({
      x: fc.double({ min: 2010, max: 2020, noNaN: true }),
      y: fc.option(fc.double()),
    });
    fc.assert(
      fc.property(
        fc.array(point, { maxLength: 30 }),
        fc.integer({ min: 1, max: 60 }),
        (points: SparkPoint[], columns) => {
          const line = spark({ ...scale, columns, points });
          expect(displayWidth(line)).toBe(columns);
          const read = points.filter(({ y }) => y !== null && Number.isFinite(y)).length;
          if (points.length <= columns)
            expect([...line].filter((sign) => blocks.includes(sign))).toHaveLength(read);
        },
      ),
    );
  });
});
