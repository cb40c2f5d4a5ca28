// One field of a JSON text changes, every other byte stays. Contract: design.md §3.

import fc from "fast-check";
import { expect, test } from "vitest";
import { withField, withoutField } from "../../../packages/cli/src/logbook/edit-json.ts";

const byHand = `{ "name": "Pump", "cylinders": ["1", "2"],\r\n  "geometry": { "bore": "86mm",   "stroke" : "86mm" },\r\n  "limits": {} }\r\n`;
const onLines =
  '{\n\t"name": "Pump",\n\t"geometry": {\n\t\t"bore": "86mm"\n\t},\n\t"banks": [\n\t\t"1"\n\t]\n}\n';

test("a value that is there gives way to the new one, whatever the layout", () => {
  expect(withField(byHand, "geometry.stroke", "90mm")).toBe(
    byHand.replace('"stroke" : "86mm"', '"stroke" : "90mm"'),
  );
});

test("a field that is missing goes to the end of its object, in the object's own layout", () => {
  expect(withField(byHand, "geometry.rod", "143mm")).toBe(
    byHand.replace('"stroke" : "86mm"', '"stroke" : "86mm", "rod": "143mm"'),
  );
  expect(withField(onLines, "geometry.rod", "143mm")).toBe(
    onLines.replace('"bore": "86mm"', '"bore": "86mm",\n\t\t"rod": "143mm"'),
  );
});

test("objects on the way that are missing are made", () => {
  expect(withField(byHand, "limits.compression.minimum", "26bar")).toBe(
    byHand.replace('"limits": {}', '"limits": { "compression": { "minimum": "26bar" } }'),
  );
  expect(withField(onLines, "wetTest.allowed", false)).toBe(
    onLines.replace("\t]\n}", '\t],\n\t"wetTest": {\n\t\t"allowed": false\n\t}\n}'),
  );
});

test("a list on several lines stays on several lines", () => {
  expect(withField(onLines, "banks", ["1", "2"])).toBe(onLines.replace('"1"\n', '"1",\n\t\t"2"\n'));
});

test("of a name that stands twice the last one counts, as JSON has it", () => {
  expect(withField('{"a":1,"a":2}', "a", 3)).toBe('{"a":1,"a":3}');
  expect(withoutField('{"a":1,"b":0,"a":2}', "a")).toBe('{"b":0}');
});

test("marks of JSON inside a text are letters like others", () => {
  const text = '{ "note": "a \\"}, { [", "use": "farm" }';
  expect(withField(text, "use", "boat")).toBe('{ "note": "a \\"}, { [", "use": "boat" }');
});

test("what is no object on the way is left alone", () => {
  expect(withField('{ "geometry": "unknown" }', "geometry.bore", "86mm")).toBeUndefined();
});

test("a field taken out leaves the others where they are", () => {
  expect(withoutField(onLines, "name")).toBe(onLines.replace('"name": "Pump",\n\t', ""));
  expect(withoutField(byHand, "geometry.stroke")).toBe(byHand.replace(',   "stroke" : "86mm"', ""));
  expect(withoutField(onLines, "geometry.bore")).toBe(onLines.replace('{\n\t\t"bore": "86mm"\n\t}', "{}"));
  expect(withoutField(onLines, "use")).toBe(onLines);
});

const names = fc.constantFrom("a", "b", "c", 'q"', "");
const value = fc.letrec<{ value: unknown; object: Record<string, unknown> }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 3 },
    fc.string(),
    fc.integer(),
    fc.boolean(),
    fc.constant(null),
    fc.array(fc.string()),
    tie("object"),
  ),
  object: fc.dictionary(names, tie("value")),
}));
const indents = fc.constantFrom(undefined, 2, "\t", 4);
const path = fc.array(
  names.filter((name) => !name.includes(".")),
  { minLength: 1, maxLength: 3 },
);

const setIn = (object: unknown, [name = "", ...rest]: readonly string[], to: unknown): unknown => {
  const own =
    typeof object === "object" && object !== null && !Array.isArray(object)
      ? (object as Record<string, unknown>)
      : undefined;
  if (own === undefined) return undefined;
  if (rest.length === 0) return { ...own, [name]: to };
  const below = setIn(Object.hasOwn(own, name) ? own[name] : {}, rest, to);
  return below === undefined ? undefined : { ...own, [name]: below };
};

test("the text with a field set reads as the value with that field set, and the length of what stays is kept", () => {
  fc.assert(
    fc.property(value.object, indents, path, value.value, (object, indent, way, to) => {
      const text = JSON.stringify(object, undefined, indent);
      const after = withField(text, way.join("."), to);
      const wanted = setIn(object, way, to);
      if (wanted === undefined) expect(after).toBeUndefined();
      else expect(JSON.parse(after ?? "")).toEqual(JSON.parse(JSON.stringify(wanted)));
    }),
  );
});
