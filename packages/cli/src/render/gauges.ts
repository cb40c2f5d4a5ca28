// Gauges as a person reads them.

import { type Gauge, fromSi } from "@sealtrend/core";
import { grid } from "./table.ts";

const plain = (value: number): string => String(Number(value.toPrecision(6)));

const scaleText = ({ unit, fullScale }: Gauge): string =>
  unit === undefined ? "" : fullScale === undefined ? unit : `${plain(fromSi(fullScale, unit))} ${unit}`;

const divisionText = ({ unit, division }: Gauge): string =>
  unit === undefined || division === undefined ? "" : `${plain(fromSi(division, unit))} ${unit}`;

const testerText = ({ kind, dial, restrictor }: Gauge): string => {
  if (kind !== "leak-down") return "";
  const bore =
    restrictor === undefined ? "restrictor not known" : `restrictor ${plain(fromSi(restrictor, "mm"))} mm`;
  return dial === undefined ? bore : `${bore}, dial ${dial}`;
};

/** One gauge in a phrase: `compression, 300 psi, class 2.5 %, steps of 5 psi`. */
export const gaugeText = (gauge: Gauge): string => {
  const { kind, classPercent } = gauge;
  const division = divisionText(gauge);
  return [
    kind,
    scaleText(gauge),
    classPercent === undefined ? "" : `class ${plain(classPercent)} %`,
    division === "" ? "" : `steps of ${division}`,
    testerText(gauge),
  ]
    .filter((text) => text !== "")
    .join(", ");
};

const head = ["gauge", "kind", "scale", "class", "step", "more"];

/** A gauge a line; `-` = not known. */
export const gaugeLines = (gauges: readonly Gauge[], width: number): readonly string[] =>
  grid(
    gauges.map((gauge) => [
      gauge.id,
      gauge.kind,
      scaleText(gauge) || "-",
      gauge.classPercent === undefined ? "-" : `${plain(gauge.classPercent)} %`,
      divisionText(gauge) || "-",
      [testerText(gauge), gauge.note ?? ""].filter((text) => text !== "").join("; "),
    ]),
    ["left", "left", "right", "right", "right", "left"],
    { head, width },
  );
