// From the options of `gauge add` to a row of gauges.csv, by column name.

import { type PressureUnit, fromSi, gaugeUnits, readNumber, readQuantity } from "@sealtrend/core";
import type { Args, Fault } from "../command.ts";
import { usageFault } from "./usage.ts";

export interface GaugeCells {
  readonly cells: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** @param name - the gauge's own */
export const gaugeCells = (name: string, args: Args): GaugeCells => {
  const faults: Fault[] = [];
  const note = (found: string, expected: string, mend: string): string => {
    faults.push(usageFault("gauge-bad", found, expected, mend));
    return "";
  };
  const kind = args.text("kind") ?? "";
  const unit = unitOf(args);
  const pressure = (option: string, example: string): string => {
    const typed = args.text(option);
    if (typed === undefined) return "";
    const reading = readQuantity(typed, "pressure", unit);
    const expected = `a pressure with its unit (${gaugeUnits.join(", ")})`;
    if (!reading.ok || unit === undefined || reading.si <= 0)
      return note(
        `--${option} "${typed}"${/^[\d.,\s]+$/.test(typed) ? ": in which unit?" : ""}`,
        expected,
        `--${option} ${example}`,
      );
    return numberText(reading.unit === unit ? reading.value : fromSi(reading.si, unit));
  };
  if (kind !== "leak-down")
    for (const option of ["dial", "restrictor"])
      if (args.text(option) !== undefined)
        note(
          `--${option} with --kind ${kind}`,
          `--${option} with a leak-down tester`,
          `leave --${option} out`,
        );
  const fullScale = pressure("full-scale", "300psi");
  const division = pressure("division", "5psi");
  if (fullScale !== "" && division !== "" && Number(division) >= Number(fullScale))
    note(
      `--division ${division} of a scale of ${fullScale}`,
      "the smallest step of the scale",
      "--division 5psi",
    );
  const cells = {
    gauge: name,
    kind,
    unit: unit ?? "",
    full_scale: fullScale,
    class_percent: classCell(args.text("class"), note),
    division,
    restrictor_mm: restrictorCell(args.text("restrictor"), note),
    dial: args.text("dial") ?? "",
    note: args.text("note") ?? "",
  };
  return { cells, faults };
};

/** The unit given, else that of the full scale. */
const unitOf = (args: Args): PressureUnit | undefined => {
  const typed = args.text("unit");
  if (typed !== undefined) return gaugeUnits.find((name) => name === typed);
  const scale = readQuantity(args.text("full-scale") ?? "", "pressure");
  return scale.ok ? gaugeUnits.find((name) => name === scale.unit) : undefined;
};

type Note = (found: string, expected: string, mend: string) => string;

const classCell = (typed: string | undefined, note: Note): string => {
  if (typed === undefined) return "";
  const reading = readNumber(typed.replace(/\s*%$/, ""));
  if (reading.ok && reading.value >= 0.01 && reading.value <= 20) return numberText(reading.value);
  return note(`--class "${typed}"`, "the accuracy class in percent of full scale, 0.01 to 20", "--class 2.5");
};

const restrictorCell = (typed: string | undefined, note: Note): string => {
  if (typed === undefined) return "";
  if (typed.toLowerCase() === "unknown") return "unknown";
  const reading = readQuantity(typed, "length");
  const millimetres = reading.ok ? fromSi(reading.si, "mm") : 0;
  if (millimetres >= 0.1 && millimetres <= 10) return numberText(millimetres);
  return note(
    `--restrictor "${typed}"`,
    "its bore with the unit, 0.1 to 10 mm, or unknown",
    "--restrictor 1.0mm",
  );
};

/** At most six digits: what a conversion adds to the last ones is not on any dial. */
const numberText = (value: number): string => String(Number(value.toPrecision(6)));
