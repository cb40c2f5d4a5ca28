// The JSON Schema of engine.json, made from the table of its fields: what the published file must be.

import {
  type FieldKind,
  engineFields,
  expectation,
  lengthUnits,
  limitQuantitiesOf,
  partNames,
} from "@sealtrend/core/parts";

type Schema = Readonly<Record<string, unknown>>;

const labels: Schema = {
  type: "array",
  minItems: 1,
  maxItems: 28,
  uniqueItems: true,
  items: { type: "string", pattern: "^[A-Za-z0-9]{1,4}$" },
};

/** Lowest and highest; null where an end is open. */
const pair: Schema = { type: "array", minItems: 2, maxItems: 2, items: { type: ["number", "null"] } };
const unit: Schema = { enum: lengthUnits };
const newOrWear: Schema = { anyOf: [{ required: ["new"] }, { required: ["wear"] }] };

const clearance: Schema = {
  type: "object",
  required: ["part", "quantity", "unit"],
  ...newOrWear,
  properties: {
    part: { enum: partNames },
    label: { type: "string", description: "for one of them only: a journal's number, in or ex of valves" },
    at: { type: "string", description: "for one place only: ring 1, 2 or oil" },
    quantity: {
      type: "string",
      description: partNames
        .map(
          (part) =>
            `${part}: ${limitQuantitiesOf(part)
              .map(({ name }) => name)
              .join(", ")}`,
        )
        .filter((line) => !line.endsWith(": "))
        .join("; "),
    },
    new: { ...pair, description: "wanted after the work" },
    wear: { ...pair, description: "what may stay in" },
    unit,
    source: { type: "string" },
    also: {
      type: "object",
      required: ["unit"],
      ...newOrWear,
      properties: { new: pair, wear: pair, unit },
      description: "the same limits as printed in a second unit, to find a misprint",
    },
  },
};

const offered = (example: string): Schema => ({
  type: "object",
  properties: Object.fromEntries(
    ["bore", "main", "pin"].map((part) => [
      part,
      {
        type: "object",
        required: ["unit", "sizes"],
        properties: {
          unit,
          sizes: {
            type: "array",
            minItems: 1,
            uniqueItems: true,
            items: { type: "number", exclusiveMinimum: 0 },
          },
        },
      },
    ]),
  ),
  additionalProperties: false,
  description: `such as ${example}`,
});

const fieldSchema = (field: FieldKind): Schema => {
  switch (field.kind) {
    case "text":
      return { type: "string" };
    case "yes-no":
      return { type: "boolean" };
    case "word":
      return { enum: field.words };
    case "number":
      return {
        type: field.whole === true ? "integer" : "number",
        minimum: field.least,
        maximum: field.most,
      };
    case "price":
      return { type: "number", minimum: 0 };
    case "quantity":
    case "range":
    case "ownership":
    case "since":
      return { type: "string", description: expectation(field) };
    case "labels":
      return labels;
    case "banks":
      return { type: "array", items: labels };
    case "clearances":
      return { type: "array", items: clearance, description: `such as ${field.example}` };
    case "offered":
      return offered(field.example);
    case "curves":
      return { type: "array", description: `such as ${field.example}` };
  }
};

const properties = (paths: readonly string[], prefix = ""): Schema => {
  const names = [...new Set(paths.map((path) => path.slice(prefix.length).split(".")[0] ?? ""))];
  return Object.fromEntries(
    names.map((name) => {
      const path = prefix + name;
      const field = engineFields[path];
      const below = paths.filter((one) => one.startsWith(`${path}.`));
      return [
        name,
        field === undefined
          ? { type: "object", properties: properties(below, `${path}.`) }
          : fieldSchema(field),
      ];
    }),
  );
};

/** Other fields are allowed: the program keeps what it does not know. */
export const engineSchema = (): Schema => ({
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "sealtrend/engine@1",
  title: "sealtrend/engine@1",
  description:
    "engine.json: what an engine is. Only cylinders and ignition are needed; other fields are kept.",
  type: "object",
  required: ["cylinders", "ignition"],
  properties: properties(Object.keys(engineFields)),
});
