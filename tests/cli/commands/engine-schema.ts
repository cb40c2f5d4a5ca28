// The JSON Schema of engine.json, made from the table of its fields: what the published file must be.

import { type FieldKind, engineFields, expectation } from "@sealtrend/core";

type Schema = Readonly<Record<string, unknown>>;

const labels: Schema = {
  type: "array",
  minItems: 1,
  maxItems: 28,
  uniqueItems: true,
  items: { type: "string", pattern: "^[A-Za-z0-9]{1,4}$" },
};

const fieldSchema = (field: FieldKind): Schema => {
  switch (field.kind) {
    case "text":
      return { type: "string" };
    case "yes-no":
      return { type: "boolean" };
    case "word":
      return { enum: field.words };
    case "number":
      return { type: "number", minimum: field.least, maximum: field.most };
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
    case "curves":
    case "any":
      return {
        type: field.example.startsWith("[") ? "array" : "object",
        description: `such as ${field.example}`,
      };
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
