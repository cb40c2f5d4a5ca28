import { expect, test } from "vitest";
import { grown } from "../../../packages/cli/src/yard/grown.ts";

test("a list of numbers keeps them all however long it grows, and has 0 where none was put", () => {
  const offsets = grown((length) => new Float64Array(length));
  const places = Array.from({ length: 50_000 }, (_, i) => i);
  for (const place of places) offsets.set(place, 2 ** 33 + place);
  expect(places.every((place) => offsets.at(place) === 2 ** 33 + place)).toBe(true);
  offsets.set(0, 7);
  expect([offsets.at(0), offsets.at(1), offsets.at(70_000)]).toEqual([7, 2 ** 33 + 1, 0]);
});
