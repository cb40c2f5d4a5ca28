// The values of `restate` as typed: every fault is gathered, none is guessed away.

import { type UnitName, gaugeUnits, readNumber, readQuantity } from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { usageFault } from "../usage.ts";

export interface Wanted {
  /** What stands there, `a pressure with its unit (psi, kPa)`. */
  readonly expected: string;
  readonly example: string;
  readonly least: number;
  readonly most: number;
}

/** SI value and the unit it was typed in. */
export interface TypedValue {
  readonly si: number;
  readonly unit: UnitName;
}

const pressures: Wanted = {
  expected: `a gauge pressure with its unit (${gaugeUnits.join(", ")}), up to 5 MPa`,
  example: "60psi",
  least: 0,
  most: 5e6,
};
const supplies: Wanted = {
  ...pressures,
  expected: `${pressures.expected}, above 0`,
  example: "80psi",
  least: Number.MIN_VALUE,
};
const bores: Wanted = {
  expected: "a bore with its unit (mm, in), 0.1 to 10 mm",
  example: "0.040in",
  least: 1e-4,
  most: 0.01,
};
const tolerances: Wanted = {
  expected: "a half-width with its unit (mm, in), up to 0.5 mm",
  example: "0.02mm",
  least: 0,
  most: 5e-4,
};
const lengths: Wanted = {
  expected: "the length of the bore with its unit (mm, in), up to 100 mm",
  example: "6.35mm",
  least: 1e-5,
  most: 0.1,
};
const heights: Wanted = {
  expected: "a height with its unit, -500 to 6000 m",
  example: "350m",
  least: -500,
  most: 6_000,
};
const temperatures: Omit<Wanted, "example"> = {
  expected: "a temperature with its unit, -50C to 300C",
  least: 223.15,
  most: 573.15,
};

/** A value that does not fit is noted in `faults` and comes back as undefined, as one that was not given. */
export interface Values {
  readonly faults: readonly Fault[];
  readonly note: (found: string, expected: string, mend: string) => undefined;
  readonly pressure: (name: string) => TypedValue | undefined;
  /** A pressure above 0. */
  readonly supply: (name: string, example?: string) => TypedValue | undefined;
  /** `unknown` is as good as left out. */
  readonly bore: (name: string) => TypedValue | undefined;
  readonly tolerance: (name: string) => TypedValue | undefined;
  readonly length: (name: string) => TypedValue | undefined;
  readonly height: (name: string) => TypedValue | undefined;
  readonly temperature: (name: string, example: string) => TypedValue | undefined;
  /** A plain number; a percent sign may stand behind it where the example has one. */
  readonly number: (name: string, wanted: Wanted) => number | undefined;
}

export const valuesOf = (args: Args): Values => {
  const faults: Fault[] = [];
  const note = (found: string, expected: string, mend: string): undefined => {
    faults.push(usageFault("restate-bad", found, expected, mend));
    return undefined;
  };
  const quantity =
    (dimension: "pressure" | "length" | "temperature", wanted: Wanted) =>
    (name: string): TypedValue | undefined => {
      const typed = args.text(name);
      if (typed === undefined) return undefined;
      const reading = readQuantity(typed, dimension);
      if (reading.ok && reading.si >= wanted.least && reading.si <= wanted.most)
        return { si: reading.si, unit: reading.unit };
      const open = !reading.ok && reading.fault === "unit-missing" ? ": in which unit?" : "";
      return note(`--${name} "${typed}"${open}`, wanted.expected, `--${name} ${wanted.example}`);
    };
  const bore = quantity("length", bores);
  return {
    faults,
    note,
    pressure: quantity("pressure", pressures),
    supply: (name, example = supplies.example) => quantity("pressure", { ...supplies, example })(name),
    bore: (name) => (args.text(name)?.toLowerCase() === "unknown" ? undefined : bore(name)),
    tolerance: quantity("length", tolerances),
    length: quantity("length", lengths),
    height: quantity("length", heights),
    temperature: (name, example) => quantity("temperature", { ...temperatures, example })(name),
    number: (name, wanted) => {
      const typed = args.text(name);
      if (typed === undefined) return undefined;
      const reading = readNumber(wanted.example.endsWith("%") ? typed.replace(/\s*%$/, "") : typed);
      if (reading.ok && reading.value >= wanted.least && reading.value <= wanted.most) return reading.value;
      return note(`--${name} "${typed}"`, wanted.expected, `--${name} ${wanted.example}`);
    },
  };
};
