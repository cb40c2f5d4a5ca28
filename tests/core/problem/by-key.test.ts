// Things by what they have in common.

import { byKey } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

test("groups stand in the order of their first members, members in theirs; any word is a key", () => {
  const words = ["pump", "van", "pit", "constructor", "valve"];
  expect([...byKey(words, (word) => word.charAt(0))]).toEqual([
    ["p", ["pump", "pit"]],
    ["v", ["van", "valve"]],
    ["c", ["constructor"]],
  ]);
  expect(
    [...byKey(words, (word) => (word === "constructor" ? "__proto__" : ""))].map(([key]) => key),
  ).toEqual(["", "__proto__"]);
  expect([...byKey([], String)]).toEqual([]);
});
