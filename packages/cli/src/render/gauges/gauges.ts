// Gauges as a person reads them.

import { type Gauge, type KnownHole, fromSi } from "@sealtrend/core";
import { grid } from "../table.ts";
import { fixed } from "../words.ts";

const plain = (value: number): string => String(Number(value.toPrecision(6)));

const inUnit = ({ unit }: Gauge, value: number | undefined): string =>
  unit === undefined || value === undefined ? "" : `${plain(fromSi(value, unit))} ${unit}`;

const scaleText = (gauge: Gauge): string => inUnit(gauge, gauge.fullScale) || (gauge.unit ?? "");

const millimetres = (value: number): string => `${plain(fromSi(value, "mm"))} mm`;

/** `restrictor 1 mm ±0.02 mm coned, 6.35 mm long`. */
const boreText = ({ restrictor, restrictorTolerance, restrictorLength, profile }: Gauge): string => {
  const long = restrictorLength === undefined ? "" : `, ${millimetres(restrictorLength)} long`;
  const made = profile === undefined || profile === "unknown" ? "" : ` ${profile}`;
  if (restrictor === undefined) return `restrictor not known${long}`;
  const tolerance = restrictorTolerance === undefined ? "" : ` ±${millimetres(restrictorTolerance)}`;
  return `restrictor ${millimetres(restrictor)}${tolerance}${made}${long}`;
};

const testerText = (gauge: Gauge): string => {
  const { kind, dial, regulated, restrictorCd, knownHoles } = gauge;
  if (kind !== "leak-down") return "";
  return listed([
    boreText(gauge),
    restrictorCd === undefined ? "" : `Cd ${plain(restrictorCd)}`,
    dial === undefined ? "" : `dial ${dial}`,
    regulated === undefined
      ? ""
      : `set to ${inUnit(gauge, regulated) || `${plain(fromSi(regulated, "kPa"))} kPa`}`,
    gauge.matched === undefined ? "" : gauge.matched ? "dials agree" : "dials differ",
    knownHoles === undefined
      ? ""
      : `holes read ${knownHoles.map((hole) => holeText(hole, gauge)).join(", ")}`,
  ]);
};

/** As it was written: `1.0 mm: 66 psi`, `1.0 mm: 35 % lost`. */
export const holeText = ({ text, holds }: KnownHole, { dial }: Gauge): string => {
  const counts = holds === "pressure" ? "" : dial === "percent-held" ? " held" : " lost";
  const parts = text.split(":").map((part) => part.replace(/^([\d.,]+)\s*/, "$1 "));
  return `${parts.join(": ")}${counts}`;
};

const hoseText = ({ valveEnd, hose }: Gauge): string =>
  listed([
    valveEnd === undefined ? "" : `valve at the ${valveEnd}`,
    hose === undefined ? "" : `hose ${plain(fromSi(hose, "cm3"))} cm3`,
  ]);

const offsetText = (gauge: Gauge): string => {
  const { readsHigh, unit = "kPa" } = gauge;
  if (readsHigh === undefined || readsHigh === 0) return "";
  const by = `${plain(fromSi(Math.abs(readsHigh), unit))} ${unit}`;
  return `reads ${by} ${readsHigh > 0 ? "high" : "low"}`;
};

/** `counts as red: reads x 1.031 of it (2026-05-03)`. */
const linkText = ({ link, kind }: Gauge): string => {
  if (link === undefined) return "";
  const what = kind === "compression" ? "reads" : "shows leaks";
  return `counts as ${link.to}: ${what} x ${fixed(link.factor, 3)} of it (${link.date})`;
};

const listed = (parts: readonly string[]): string => parts.filter((text) => text !== "").join(", ");

/** One gauge in a phrase: `compression, 300 psi, class 2.5 %, steps of 5 psi`. */
export const gaugeText = (gauge: Gauge): string => {
  const { kind, classPercent, division } = gauge;
  return listed([
    kind,
    scaleText(gauge),
    classPercent === undefined ? "" : `class ${plain(classPercent)} %`,
    division === undefined ? "" : `steps of ${inUnit(gauge, division)}`,
    offsetText(gauge),
    hoseText(gauge),
    testerText(gauge),
  ]);
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
      inUnit(gauge, gauge.division) || "-",
      [offsetText(gauge), hoseText(gauge), testerText(gauge), linkText(gauge), gauge.note ?? ""]
        .filter((text) => text !== "")
        .join("; "),
    ]),
    ["left", "left", "right", "right", "right", "left"],
    { head, width },
  );
