// What is wrong with the fields of engine.json, each by itself.

import { type Problem, nearest, problem } from "../problem/index.ts";
import { clearanceLabelFaults } from "./clearance-labels.ts";
import { curvesFault } from "./cranking-curves.ts";
import { engineFields, expectation } from "./engine-fields.ts";
import type { FieldFault } from "./field-fault.ts";
import type { FieldKind } from "./field-kind.ts";
import { faultsInside, fits, strangersInside } from "./field-value.ts";
import { type JsonObject, type JsonView, fieldAt, isObject } from "./json-view.ts";

/** The paths that hold further fields: `limits`, `limits.compression` … */
const groups: ReadonlySet<string> = new Set(
  Object.keys(engineFields).flatMap((path) =>
    path
      .split(".")
      .slice(0, -1)
      .map((_, i, parts) => parts.slice(0, i + 1).join(".")),
  ),
);

/** The names that may stand behind a prefix such as `limits.`. */
const namesAfter = (prefix: string): readonly string[] => [
  ...new Set(
    Object.keys(engineFields)
      .filter((path) => path.startsWith(prefix))
      .map((path) => path.slice(prefix.length).split(".")[0] ?? ""),
  ),
];

/** Each field holds what its kind takes; a name that is not known is told. */
export const checkFields = (view: JsonView, value: JsonObject, problems: Problem[], prefix = ""): void => {
  for (const [name, inner] of Object.entries(value)) {
    const path = prefix + name;
    const field = Object.hasOwn(engineFields, path) ? engineFields[path] : undefined;
    const refuse = (expected: string, mend?: string): void => {
      const facts = {
        field: path,
        text: JSON.stringify(inner),
        expected,
        ...(mend === undefined ? {} : { mend }),
      };
      problems.push(problem("field-bad", facts, view.place(path)));
    };
    if (field?.kind === "clearances" || field?.kind === "offered") insideFaults(view, path, problems);
    else if (field !== undefined) {
      const found = field.kind === "curves" ? curvesFault(inner) : undefined;
      if (!fits(field, inner)) refuse(found ?? expectation(field), fieldMend(field, inner));
    } else if (!groups.has(path)) {
      const facts = { field: path, fields: namesAfter(prefix) };
      problems.push(problem("field-unknown", facts, view.place(path), "caution"));
    } else if (isObject(inner)) checkFields(view, inner, problems, `${path}.`);
    else refuse(`{ } around any of ${namesAfter(`${path}.`).join(", ")}`);
  }
};

/** Faults of the entries inside a field, each by its own path. */
const insideFaults = (view: JsonView, path: string, problems: Problem[]): void => {
  const field = engineFields[path];
  if (field === undefined) return;
  const whole = fieldAt(view.root, path);
  for (const fault of faultsInside(field, whole)) problems.push(problemInside(view, path, fault));
  for (const { path: inner, known } of strangersInside(field, whole)) {
    const facts = { field: path + inner, fields: known };
    problems.push(problem("field-unknown", facts, view.place(path + inner), "caution"));
  }
};

const problemInside = (view: JsonView, path: string, fault: FieldFault): Problem => {
  const { path: inner, value, expected, mend } = fault;
  const text = value === undefined ? "missing" : JSON.stringify(value);
  const facts = { field: path + inner, text, expected, ...(mend === undefined ? {} : { mend }) };
  return problem("field-bad", facts, view.place(path + inner));
};

/** What to type instead; undefined where the expectation says it all. */
const fieldMend = (field: FieldKind, value: unknown): string | undefined => {
  if (field.kind === "yes-no") return "write true or false, without quotes";
  if (field.kind === "text") return "write it in double quotes";
  if (field.kind === "quantity" || field.kind === "range")
    return `write it in quotes and with its unit: "${field.example}"`;
  if (field.kind === "number") return "write the number alone, without quotes and without a unit";
  if (field.kind === "price") return priceMend(value);
  if (field.kind === "ownership") return 'write "5y" or "for-good"';
  if (field.kind === "since") return 'write it in double quotes: "2004"';
  if (field.kind !== "word" || typeof value !== "string") return undefined;
  const near = field.also[value.toLowerCase()] ?? nearest(value, field.words)[0];
  return near === undefined ? undefined : `write "${near}"`;
};

const priceMend = (value: unknown): string =>
  typeof value === "number"
    ? "write what it costs as a number above 0; leave the line out where nobody knows"
    : "write the number alone, without quotes; the currency stands once, in prices.currency";

/** Banks and firing order name each cylinder once, and limits what the engine has, as soon as the cylinders themselves are sound. */
export const checkLabels = (view: JsonView, problems: Problem[]): void => {
  const labels = fieldAt(view.root, "cylinders");
  if (!isFit("cylinders", labels)) return;
  const limits = fieldAt(view.root, "limits.clearances");
  if (Array.isArray(limits))
    for (const fault of clearanceLabelFaults(limits, labels.map(String)))
      problems.push(problemInside(view, "limits.clearances", fault));
  for (const path of ["banks", "firingOrder"]) {
    const value = fieldAt(view.root, path);
    if (!isFit(path, value)) continue;
    const named = value.flat();
    const complete =
      new Set(named).size === labels.length &&
      named.length === labels.length &&
      named.every((label) => labels.includes(label));
    if (complete) continue;
    const expected = `each of the cylinders ${labels.join(" ")} once`;
    const facts = { field: path, text: JSON.stringify(value), expected };
    problems.push(problem("field-bad", facts, view.place(path)));
  }
};

const isFit = (path: string, value: unknown): value is readonly unknown[] => {
  const field = engineFields[path];
  return field !== undefined && fits(field, value);
};
