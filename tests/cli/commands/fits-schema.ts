// The part of JSON Schema that the schemas of this project use.

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

interface Schema {
  readonly type?: string | readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly pattern?: string;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean;
  readonly items?: Schema;
}

const folder = fileURLToPath(new URL("../../../packages/cli/schemas/", import.meta.url));

export const schemaOf = (name: string): Schema =>
  JSON.parse(readFileSync(`${folder}${name}.schema.json`, "utf8")) as Schema;

const typeOf = (value: unknown): string =>
  Array.isArray(value)
    ? "array"
    : value === null
      ? "null"
      : Number.isInteger(value)
        ? "integer"
        : typeof value;

/** What in a document is not as its schema says, a sentence each. */
export const misfits = (value: unknown, schema: Schema, at = "$"): readonly string[] => {
  const found: string[] = [];
  const type = typeOf(value);
  const types = schema.type === undefined ? [type] : [schema.type].flat();
  if (!types.includes(type) && !(type === "integer" && types.includes("number")))
    found.push(`${at} is ${type}, not ${types.join(" or ")}`);
  if (schema.anyOf?.every((one) => misfits(value, one, at).length > 0) === true)
    found.push(`${at} is like none of the forms`);
  if (schema.const !== undefined && value !== schema.const)
    found.push(`${at} is not ${JSON.stringify(schema.const)}`);
  if (schema.enum !== undefined && !schema.enum.includes(value)) found.push(`${at} is none of the words`);
  if (schema.pattern !== undefined && !new RegExp(schema.pattern).test(String(value)))
    found.push(`${at} has another form`);
  if (schema.minimum !== undefined && Number(value) < schema.minimum) found.push(`${at} is too small`);
  const { exclusiveMinimum: above } = schema;
  if (above !== undefined && Number(value) <= above) found.push(`${at} is not above ${String(above)}`);
  if (Array.isArray(value)) {
    if (value.length > (schema.maxItems ?? Infinity)) found.push(`${at} is too long`);
    if (value.length < (schema.minItems ?? 0)) found.push(`${at} is too short`);
    const { items } = schema;
    if (items !== undefined)
      found.push(...value.flatMap((item, i) => misfits(item, items, `${at}[${String(i)}]`)));
  } else if (typeof value === "object" && value !== null) {
    for (const name of schema.required ?? []) if (!(name in value)) found.push(`${at} has no ${name}`);
    for (const [name, inner] of Object.entries(value)) {
      const known = schema.properties?.[name];
      if (known !== undefined) found.push(...misfits(inner, known, `${at}.${name}`));
      else if (schema.additionalProperties === false) found.push(`${at}.${name} is not in the schema`);
    }
  }
  return found;
};
