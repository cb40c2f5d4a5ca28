// What can be typed of a gauge: the options of `gauge add`, by the column of gauges.csv that each fills.

import { type UnitName, gaugeUnits } from "@sealtrend/core/parts";
import type { Option } from "../../command.ts";

const any = "Any gauge";
const tester = "A leak-down tester";
const compression = "A compression gauge";

/** How the text of an option becomes a cell. */
export type CellKind =
  | { readonly kind: "as-typed" }
  /** In the unit of the dial. */
  | { readonly kind: "pressure"; readonly sign: "above-0" | "either" }
  | { readonly kind: "quantity"; readonly unit: UnitName; readonly least: number; readonly most: number }
  | { readonly kind: "number"; readonly least: number; readonly most: number; readonly of: string };

export interface GaugeOption extends Option {
  readonly column: string;
  readonly cell: CellKind;
  /** The only kind of gauge that has it; absent = both. */
  readonly only?: "compression" | "leak-down";
  /** A word that stands for not known. */
  readonly unknown?: string;
}

const asTyped: CellKind = { kind: "as-typed" };

export const gaugeOptions: readonly GaugeOption[] = [
  {
    name: "kind",
    value: "KIND",
    help: "what it measures",
    choices: ["compression", "leak-down"],
    group: any,
    column: "kind",
    cell: asTyped,
  },
  {
    name: "unit",
    value: "UNIT",
    help: "the unit of its dial",
    choices: gaugeUnits,
    group: any,
    column: "unit",
    cell: asTyped,
  },
  {
    name: "full-scale",
    value: "300psi",
    help: "the highest figure of its dial",
    group: any,
    column: "full_scale",
    cell: { kind: "pressure", sign: "above-0" },
  },
  {
    name: "class",
    value: "2.5",
    help: "accuracy, percent of full scale",
    group: any,
    column: "class_percent",
    cell: { kind: "number", least: 0.01, most: 20, of: "the accuracy class in percent of full scale" },
  },
  {
    name: "division",
    value: "5psi",
    help: "its smallest step",
    group: any,
    column: "division",
    cell: { kind: "pressure", sign: "above-0" },
  },
  {
    name: "reads-high",
    value: "3psi",
    help: "by how much it is known to read too high; -3psi reads low",
    group: any,
    column: "reads_high",
    cell: { kind: "pressure", sign: "either" },
  },
  { name: "note", value: "TEXT", help: "anything else", group: any, column: "note", cell: asTyped },
  {
    name: "valve-end",
    value: "END",
    help: "where its check valve sits",
    choices: ["plug", "gauge"],
    group: compression,
    column: "valve_end",
    cell: asTyped,
    only: "compression",
  },
  {
    name: "hose",
    value: "8cm3",
    help: "what hose and adapter hold",
    group: compression,
    column: "hose_cm3",
    cell: { kind: "quantity", unit: "cm3", least: 0, most: 500 },
    only: "compression",
  },
  ...(
    [
      {
        name: "dial",
        value: "DIAL",
        help: "what its dial shows",
        choices: ["pressure", "percent-lost", "percent-held"],
        column: "dial",
        cell: asTyped,
      },
      {
        name: "regulated",
        value: "80psi",
        help: "the supply pressure it is set to",
        column: "regulated",
        cell: { kind: "pressure", sign: "above-0" },
      },
      {
        name: "matched",
        value: "WORD",
        help: "whether both dials agree with the valve shut",
        choices: ["yes", "no"],
        column: "matched",
        cell: asTyped,
      },
      {
        name: "restrictor",
        value: "1.0mm",
        help: "bore of its restrictor",
        words: ["unknown"],
        orElse: "its size",
        column: "restrictor_mm",
        cell: { kind: "quantity", unit: "mm", least: 0.1, most: 10 },
        unknown: "unknown",
      },
      {
        name: "restrictor-tolerance",
        value: "0.02mm",
        help: "the bore is known to so much, plus or minus",
        column: "restrictor_tol_mm",
        cell: { kind: "quantity", unit: "mm", least: 0, most: 0.5 },
      },
      {
        name: "restrictor-length",
        value: "6.35mm",
        help: "how long the bore is",
        column: "restrictor_length_mm",
        cell: { kind: "quantity", unit: "mm", least: 0.01, most: 100 },
      },
      {
        name: "profile",
        value: "PROFILE",
        help: "how the air enters it",
        choices: ["coned", "square", "thin-plate", "unknown"],
        column: "profile",
        cell: asTyped,
      },
      {
        name: "cd",
        value: "0.82",
        help: "its discharge coefficient, where it was measured",
        column: "restrictor_cd",
        cell: { kind: "number", least: 0.3, most: 1, of: "the discharge coefficient" },
      },
    ] satisfies readonly Omit<GaugeOption, "group" | "only">[]
  ).map((option) => ({ ...option, group: tester, only: "leak-down" }) as const),
];
