// The usual check set of a gauge study (data/reference/gauge-study.csv, key aiag-msa).

import { gaugeStudy } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { referenceRows } from "./reference-rows.ts";

const rows = referenceRows("gauge-study");
const cells = Array.from({ length: 10 }, (_, part) =>
  ["A", "B", "C"].map((gauge) =>
    rows.filter((row) => row.gauge === gauge).map((row) => Number(row[`p${String(part + 1)}`])),
  ),
);

test("repeats, gauges and parts of the check set come out as R's analysis of variance has them", () => {
  // computed with R: anova(lm(y ~ p * o)), the interaction pooled with the error
  const study = gaugeStudy(cells);
  expect(study?.repeats).toBeCloseTo(0.199933179720817, 12);
  expect(study?.gauges).toBeCloseTo(0.226837521496322, 12);
  expect(study?.measuring).toBeCloseTo(0.302371522322905, 12);
  expect(study?.parts).toBeCloseTo(1.04232749383803, 12);
  expect(study?.steps).toBeCloseTo(4.8605, 4);
});

test("the published results, worked by averages and ranges, are near by: another method on the same readings", () => {
  // published beside the check set: EV 0.2019, AV 0.2297, GRR 0.3058, PV 1.1046, five steps
  const study = gaugeStudy(cells);
  const near = [study?.repeats, study?.gauges, study?.measuring, study?.parts];
  [0.2019, 0.2297, 0.3058, 1.1046].forEach((published, i) => {
    expect((near[i] ?? 0) / published).toBeGreaterThan(0.94);
    expect((near[i] ?? 0) / published).toBeLessThan(1.06);
  });
  expect(Math.round(study?.steps ?? 0)).toBe(5);
});

test("no gauge of the check set reads some parts differently: the interaction is that of its printed table", () => {
  // published in the same manual's table of the analysis of variance, from memory: F 0.434, 18 degrees of freedom
  const { interaction } = gaugeStudy(cells) ?? {};
  expect(interaction?.df).toEqual([18, 60]);
  expect(interaction?.f).toBeCloseTo(0.434, 3);
  // from R's sums of squares, .35898222 (18) and 2.75893333 (60); the chance computed with mpmath 1.3.0
  expect(interaction?.f).toBeCloseTo(0.35898222 / 18 / (2.75893333 / 60), 7);
  expect(interaction?.p).toBeCloseTo(0.97410672006648823, 5);
});

test("a gauge that reads low in one cylinder only, by its hose, is told by the interaction", () => {
  // invented, psi: gauge B reads 1 % over A throughout, and 6 % under it in the last cylinder
  const takes = (level: number): readonly number[] => [level, level + 1, level - 1].map(Math.log);
  const even = [150, 148, 152, 149].map((level) => [takes(level), takes(1.01 * level)]);
  const odd = even.map((part, i) => (i === 3 ? [takes(149), takes(0.94 * 149)] : part));
  expect(gaugeStudy(even)?.interaction?.p).toBeGreaterThan(0.9);
  expect(gaugeStudy(odd)?.interaction?.p).toBeLessThan(0.001);
});

test("takes that all agree leave nothing to measure an interaction against", () => {
  const same = [150, 148].map((level) => [
    [level, level],
    [level + 1, level + 1],
  ]);
  expect(gaugeStudy(same)).not.toHaveProperty("interaction");
  // in ln of the pressures rounding leaves a trace, which is no scatter
  const logs = [150.1, 148.3].map((psi) => [new Array<number>(3).fill(Math.log(psi)), [4.9, 4.9, 4.9]]);
  expect(gaugeStudy(logs)).not.toHaveProperty("interaction");
});

test("a study that is not even has no figures", () => {
  expect(
    gaugeStudy([
      [
        [1, 2],
        [1, 2],
      ],
      [[1, 2], [1]],
    ]),
  ).toBeUndefined();
  expect(
    gaugeStudy([
      [[1], [1]],
      [[1], [1]],
    ]),
  ).toBeUndefined();
  expect(gaugeStudy([[[1, 2]], [[1, 2]]])).toBeUndefined();
  expect(gaugeStudy([])).toBeUndefined();
});
