// The words for a size or a condition that cannot be, with the limit that it breaks and where to mend it.

import { type ExpectedFault, type UnitName, fromSi } from "@sealtrend/core";
import { type Fault } from "../../command.ts";
import { type Known, optionOf } from "./expect-known.ts";
import { exampleOf } from "./expect-options.ts";
import { usageFault } from "../usage.ts";

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
const because = ({ field, must, limit }: ExpectedFault): string => {
  if (field === "rod" && must === "be-above" && limit > 0)
    return ", the crank throw (half the stroke): a shorter rod cannot turn";
  if (field === "compressionRatio" && must === "be-above") return ": at 1 nothing is compressed";
  if (field === "intakeCloses" && must === "be-below") return ", which is top dead centre";
  return "";
};

/** @param engine - the engine whose file the value stands in, where it was not typed */
export const expectFault = (fault: ExpectedFault, { sources }: Known, engine: string | undefined): Fault => {
  const { field, found, must, limit } = fault;
  const option = optionOf[field] ?? field;
  const unit = units[field];
  const written = (si: number): string =>
    unit === undefined
      ? String(Number(si.toPrecision(6)))
      : `${String(Number(fromSi(si, unit).toPrecision(6)))}${unit}`;
  const source = field in sources ? sources[field as keyof Known["sources"]] : undefined;
  const inFile = source === "engine" && engine !== undefined;
  const path = field === "speed" ? "limits.compression.speed" : `geometry.${field}`;
  const name = inFile ? `${path} of ${engine}` : `--${option}`;
  const example = exampleOf(option);
  return usageFault(
    "out-of-range",
    `${name} is ${written(found)}`,
    `${words[must]} ${written(limit)}${because(fault)}`,
    inFile
      ? `sealtrend engine set ${engine} ${path} ${example}, or --${option} ${example}`
      : `--${option} ${example}`,
  );
};
