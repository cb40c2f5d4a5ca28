// What a calibration at two speeds says of an engine on a gauge, and why one was refused.

import {
  type PressureCorrection,
  type PressureUnit,
  type SpeedCalibration,
  type SpeedCalibrationRefused,
  writeNumber,
} from "@sealtrend/core/parts";
import { savedLine } from "../saved-line.ts";
import { wrapText } from "../table.ts";
import { fixed, percent } from "../words.ts";

interface Said extends SpeedCalibration {
  readonly engine: string;
  readonly gauge: string;
  /** Readings at each speed. */
  readonly takes: { readonly slow: number; readonly fast: number };
  readonly from: PressureCorrection["from"];
  /** To reference air, and its standard uncertainty of ln. */
  readonly air: PressureCorrection;
  readonly undo: "possible" | "not-possible";
}

interface Screen {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}

/** What the handbook asks for at each speed. */
const asked = 3;

/** The lines of `gauge calibrate` at two speeds. */
export const speedLines = (said: Said, screen: Screen): readonly string[] => {
  const { engine, gauge, P0, uncertainty, takes, from, undo } = said;
  const { unit, width } = screen;
  const few = Math.min(takes.slow, takes.fast) < asked;
  const lines = [
    `Without any loss ${engine} would read ${writeNumber(P0, unit)} ${unit} on ${gauge} at sea level, ± ${percent(uncertainty)} (one standard uncertainty).`,
    ...(few
      ? [
          "Fewer than three readings at a speed make it less sure, which the ± holds: three at each tell more.",
        ]
      : []),
    `From now on readings of ${engine} by ${gauge} are brought to another cranking speed by that; a planed head or another gauge needs a calibration of its own.`,
    ...(from === "assumed"
      ? ["The height of the place is not known, which most of the doubt comes from: --altitude."]
      : []),
    ...(screen.detail === "why" ? ["", ...whyLines(said, unit)] : []),
  ];
  return [
    savedLine(`kept  ${engine} on ${gauge}, by two speeds`, undo, width),
    "",
    ...lines.flatMap((line) => wrapText(line, Math.min(width, 80))),
  ];
};

const whyLines = ({ slow, fast, lossSpeed, air, takes }: Said, unit: PressureUnit): readonly string[] => [
  ...[
    { at: slow, n: takes.slow },
    { at: fast, n: takes.fast },
  ].map(
    ({ at: { speed, pressure, uPressure, uSpeed }, n }) =>
      `At ${fixed(speed, 0)} rpm (± ${percent(uSpeed, 1)}) the mean of ${String(n)} in reference air: ${writeNumber(pressure, unit, 1)} ${unit} (± ${percent(uPressure, 1)}).`,
  ),
  `This cylinder loses speed as ${fixed(lossSpeed, 0)} rpm: 1/sqrt(reading) is a straight line in 1/speed, and that is its slope; it grows with wear.`,
  `Reading / ${fixed(1 / air.factor, 4)} brings it to reference air (± ${percent(air.uncertainty, 1)}). Each ± is one standard uncertainty.`,
];

interface RefusalWords {
  readonly code: SpeedCalibrationRefused["code"];
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
}

/** Why two speeds could not tell. @param typed - the words of the command by speed */
export const speedRefusalWords = (
  refused: SpeedCalibrationRefused,
  unit: PressureUnit,
  typed: Readonly<Record<"slow" | "fast", string>>,
): RefusalWords => {
  const { code } = refused;
  if (code === "repeats-differ")
    return {
      code,
      found: `the readings at the ${refused.at} speed (${typed[refused.at]}) differ by ${writeNumber(refused.by, unit)} ${unit}, more than repeats do`,
      expected: "readings of one cylinder that lie within a few percent",
      mend: `read them again: --${refused.at}-reads`,
    };
  if (code === "tells-too-little")
    return {
      code,
      found: `these readings leave the loss-free reading ± ${percent(refused.uncertainty)} in doubt`,
      expected: "at most ± 25 %",
      mend: "bring the two speeds further apart, and read three times at each",
    };
  if (code === "two-stroke" || code === "release")
    return {
      code,
      found: refused.text,
      expected: "a four-stroke whose compression release is not at work",
      mend: "leave it: what this engine reads at two speeds is compared within each speed alone",
    };
  return {
    code,
    found: refused.text,
    expected: "one cylinder, the same day, 120 to 450 rpm, the second speed 1.25 times the first or more",
    mend: "read it again: a weak and a boosted battery, or the other plugs in and out, make the two speeds",
  };
};
