// A reading as the record would take it: more than the dial shows, or than any gauge does, is said at once, not after the last question.

import { type Engine, type Gauge, cylinderColumn, plainNumber, readTests } from "@sealtrend/core/parts";

/** A row of readings while it is typed. */
export interface Typed {
  readonly unit: string | undefined;
  readonly gauge: Gauge | undefined;
  /** By the label of the cylinder. */
  readonly cells: ReadonlyMap<string, string>;
}

/** What is wrong with a cell, and what to write, in one sentence. */
export const cellFault = (
  label: string,
  cell: string,
  { unit, gauge }: Typed,
  { engine, gauges }: { readonly engine: Engine; readonly gauges: readonly Gauge[] },
): string | undefined => {
  if (unit === undefined) return undefined;
  const columns = ["test", "date", "what", "gauge", "unit", ...engine.cylinders.map(cylinderColumn)];
  const cells = engine.cylinders.map((other) => (other === label ? plainNumber(cell) : ""));
  const row = ["2000-01-01a", "2000-01-01", "dry", gauge?.id ?? "", unit, ...cells];
  const { problems } = readTests(`${columns.join(",")}\n${row.join(",")}\n`, "", engine, gauges);
  const fault = problems.find(({ severity, code }) => severity === "error" && codes.includes(code));
  return fault === undefined ? undefined : `${fault.found}: ${fault.mend}`;
};

const codes: readonly string[] = ["gauge-over", "number-range"];
