// From the options of `gauge add` to a row of gauges.csv, by column name.

import { type PressureUnit, fromSi, gaugeUnits, readNumber, readQuantity } from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { type GaugeOption, gaugeOptions } from "./gauge-options.ts";
import { usageFault } from "../usage.ts";

export interface GaugeCells {
  readonly cells: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

type Note = (found: string, expected: string, mend: string) => string;

/** @param name - the gauge's own */
export const gaugeCells = (name: string, args: Args): GaugeCells => {
  const faults: Fault[] = [];
  const note: Note = (found, expected, mend) => {
    faults.push(usageFault("gauge-bad", found, expected, mend));
    return "";
  };
  const kind = args.text("kind") ?? "";
  const unit = unitOf(args);
  const cells: Record<string, string> = { gauge: name };
  for (const option of gaugeOptions) {
    const typed = args.text(option.name);
    const { column, only } = option;
    if (typed !== undefined && only !== undefined && only !== kind)
      note(
        `--${option.name} with --kind ${kind}`,
        `--${option.name} with ${kindText[only]}`,
        leftOut(option),
      );
    else cells[column] = typed === undefined ? "" : cellOf(option, typed, unit, note);
  }
  cells.unit = unit ?? "";
  return { cells, faults };
};

const kindText = { "leak-down": "a leak-down tester", compression: "a compression gauge" } as const;

const leftOut = ({ name }: GaugeOption): string => `leave --${name} out`;

/** The unit given, else that of the full scale. */
const unitOf = (args: Args): PressureUnit | undefined => {
  const typed = args.text("unit");
  if (typed !== undefined) return gaugeUnits.find((name) => name === typed);
  const scale = readQuantity(args.text("full-scale") ?? "", "pressure");
  return scale.ok ? gaugeUnits.find((name) => name === scale.unit) : undefined;
};

const cellOf = (option: GaugeOption, typed: string, unit: PressureUnit | undefined, note: Note): string => {
  const { cell, name, value = "", unknown } = option;
  if (typed.toLowerCase() === unknown) return typed.toLowerCase();
  switch (cell.kind) {
    case "as-typed":
      return typed;
    case "pressure":
      return pressureCell(option, typed, unit, note);
    case "quantity": {
      const reading = readQuantity(typed, cell.unit === "cm3" ? "volume" : "length");
      const written = reading.ok ? fromSi(reading.si, cell.unit) : NaN;
      if (written >= cell.least && written <= cell.most) return numberText(written);
      const range = `${String(cell.least)} to ${String(cell.most)} ${cell.unit}`;
      const or = unknown === undefined ? "" : `, or ${unknown}`;
      return note(`--${name} "${typed}"`, `${range}, with the unit${or}`, `--${name} ${value}`);
    }
    case "number": {
      const reading = readNumber(typed.replace(/\s*%$/, ""));
      if (reading.ok && reading.value >= cell.least && reading.value <= cell.most)
        return numberText(reading.value);
      const expected = `${cell.of}, ${String(cell.least)} to ${String(cell.most)}`;
      return note(`--${name} "${typed}"`, expected, `--${name} ${value}`);
    }
  }
};

/** A pressure in the unit of the dial. A supply whose dial shows percent keeps the unit it was typed in. */
const pressureCell = (
  { name, value = "", cell }: GaugeOption,
  typed: string,
  unit: PressureUnit | undefined,
  note: Note,
): string => {
  const reading = readQuantity(typed, "pressure", unit);
  const isSigned = cell.kind === "pressure" && cell.sign === "either";
  if (reading.ok && (isSigned || reading.si > 0)) {
    if (unit !== undefined)
      return numberText(reading.unit === unit ? reading.value : fromSi(reading.si, unit));
    if (name === "regulated") return `${numberText(reading.value)}${reading.unit}`;
  }
  const open = /^-?[\d.,\s]+$/.test(typed) ? ": in which unit?" : "";
  const expected = `a pressure with its unit (${gaugeUnits.join(", ")})`;
  return note(`--${name} "${typed}"${open}`, expected, `--${name} ${value}`);
};

/** At most six digits: what a conversion adds to the last ones is not on any dial. */
export const numberText = (value: number): string => String(Number(value.toPrecision(6)));
