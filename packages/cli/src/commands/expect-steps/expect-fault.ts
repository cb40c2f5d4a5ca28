// The words for a size or a condition that cannot be, with the limit that it breaks and where to mend it.

import { type ExpectedFault, type UnitName, fromSi } from "@sealtrend/core";
import { type Fault } from "../../command.ts";
import { usageFault } from "../usage.ts";
import { exampleOf, inUnitThatFits, isQuantityOption } from "./expect-options.ts";
import { type Stated, optionOf, typedOf } from "./expect-stated.ts";

const units: Readonly<Record<ExpectedFault["field"], UnitName | undefined>> = {
  bore: "mm",
  stroke: "mm",
  rod: "mm",
  compressionRatio: undefined,
  intakeCloses: "deg",
  speed: "rpm",
  leak: "mm2",
  wall: "K",
  start: "K",
  airTemperature: "C",
  airPressure: "kPa",
  gamma: undefined,
  hose: "cm3",
};

const words = {
  "be-above": "above",
  "be-below": "below",
  "be-at-least": "at least",
  "be-at-most": "at most",
};

/** What the limit is, where the number alone does not say. */
const because = ({ field, must, limit, assumed }: ExpectedFault): string => {
  if (field === "rod" && must === "be-above" && limit > 0)
    return assumed === undefined
      ? ", the crank throw (half the stroke): a shorter rod cannot turn"
      : ", half the longest stroke that is assumed where none is given: a shorter rod could not turn";
  if (field === "compressionRatio" && must === "be-above") return ": at 1 nothing is compressed";
  if (field === "intakeCloses" && must === "be-below") return ", which is top dead centre";
  return "";
};

/** A rod that fits: a usual one is 1.65 strokes long. @returns metres; undefined where no stroke is known */
const fittingRod = ({ must, limit }: ExpectedFault, { numbers }: Stated): number | undefined => {
  const stroke = numbers.stroke ?? (must === "be-above" && limit > 0 ? 2 * limit : undefined);
  return stroke === undefined ? undefined : 1.65 * stroke;
};

/** @param engine - the engine whose file the value stands in, where it was not typed */
export const expectFault = (fault: ExpectedFault, stated: Stated, engine: string | undefined): Fault => {
  const { field, found, must, limit, assumed } = fault;
  const option = optionOf(field);
  const typed = typedOf(stated.typed, field);
  const unit = typed?.unit ?? units[field];
  const written = (si: number, digits: number): string =>
    unit === undefined
      ? String(Number(si.toPrecision(digits)))
      : `${String(Number(fromSi(si, unit).toPrecision(digits)))}${unit}`;
  const inFile = stated.sources[field] === "engine" && engine !== undefined;
  const path = field === "speed" ? "limits.compression.speed" : `geometry.${field}`;
  const name = inFile ? `${path} of ${engine}` : `--${option}`;
  const refit =
    typed !== undefined && isQuantityOption(option) && ["bore", "stroke"].includes(option)
      ? inUnitThatFits(option, String(typed.value))
      : undefined;
  const rod = field === "rod" ? fittingRod(fault, stated) : undefined;
  const value = rod === undefined ? (refit ?? exampleOf(option)) : written(rod, 3);
  const strokeToo = assumed === undefined ? "" : ", or add --stroke with the stroke of this engine";
  return usageFault(
    "out-of-range",
    `${name} is ${typed?.text ?? written(found, 6)}`,
    `${words[must]} ${written(limit, 4)}${because(fault)}`,
    (inFile
      ? `sealtrend engine set ${engine} ${path} ${value}, or --${option} ${value}`
      : `--${option} ${value}`) + strokeToo,
  );
};
