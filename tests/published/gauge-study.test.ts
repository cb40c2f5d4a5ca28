// The usual check set of a gauge study (data/reference/gauge-study.csv, key aiag-msa).

import { gaugeStudy } from "@sealtrend/core";
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
