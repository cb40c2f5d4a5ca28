// Which one of its kind a limit of engine.json is for: a label that names nothing of the engine would leave it to judge nothing.

import type { FieldFault } from "./field-fault.ts";
import { isObject } from "./json-view.ts";
import { quantityIn } from "./clearance-faults.ts";
import { labelMend, labelsExpected, readLabel } from "./measured-labels.ts";
import { type MeasuredLabel, partNames, quantitiesOf, quantityOf } from "./measured-parts.ts";
import type { MeasuredPart } from "./measurement-types.ts";

/** @param entries - of `limits.clearances`, sound or not  @param cylinders - the labels of the engine */
export const clearanceLabelFaults = (
  entries: readonly unknown[],
  cylinders: readonly string[],
): readonly FieldFault[] =>
  entries.flatMap((entry, i): FieldFault[] => {
    if (!isObject(entry) || typeof entry.label !== "string" || entry.label === "") return [];
    const { label } = entry;
    const part = partNames.find((name) => name === entry.part);
    const quantity = part === undefined ? undefined : quantityIn(part, entry.quantity)?.name;
    if (part === undefined || quantity === undefined) return [];
    const kinds = kindsOf(part, quantity);
    const read = kinds.map((kind) => readLabel(kind, label, cylinders));
    const isOne = read.some((one) => one?.toLowerCase() === label.toLowerCase());
    if (isOne || (kinds.includes("valve") && /^(?:in|ex)$/i.test(label))) return [];
    const [kind = "none"] = kinds;
    const meant = read.find((one) => one !== undefined && one !== "");
    const mend = meant === undefined ? mendOf(kind, cylinders) : `write "${meant}"`;
    return [{ path: `[${String(i)}].label`, value: label, expected: expectedOf(kind, cylinders), mend }];
  });

/** As it is measured; what is worked out is named as anything of its part. */
const kindsOf = (part: MeasuredPart, quantity: string): readonly MeasuredLabel[] => {
  const measured = quantityOf(part, quantity);
  return [...new Set((measured === undefined ? quantitiesOf(part) : [measured]).map(({ label }) => label))];
};

const expectedOf = (kind: MeasuredLabel, cylinders: readonly string[]): string =>
  kind === "valve"
    ? `in or ex for all of them, or ${labelsExpected(kind, cylinders)}`
    : labelsExpected(kind, cylinders);

const mendOf = (kind: MeasuredLabel, cylinders: readonly string[]): string =>
  kind === "none"
    ? 'take "label" out'
    : `${labelMend(kind, cylinders)}; take "label" out where the limit is for all of them`;
