// What is written to a descriptor itself, and what its stream takes over.

import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { afterAll, expect, test } from "vitest";
import { straight } from "../../packages/cli/src/straight.ts";

const folder = mkdtempSync(join(tmpdir(), "sealtrend-straight-"));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const taken = (): { readonly stream: PassThrough; readonly text: () => string } => {
  const stream = new PassThrough();
  return { stream, text: () => String(stream.read() ?? "") };
};

test("all of a text goes to the descriptor, and no stream is made", () => {
  const path = join(folder, "answer");
  const fd = openSync(path, "w");
  const way = straight(fd, () => {
    throw new Error("a stream was made");
  });
  way.write("71 °C, ");
  way.write("");
  way.write("x".repeat(200_000));
  closeSync(fd);
  expect(way.isDone()).toBe(true);
  expect(readFileSync(path, "utf8")).toBe(`71 °C, ${"x".repeat(200_000)}`);
});

test("what the descriptor refuses is left to the stream, with all that follows", () => {
  const path = join(folder, "read-only");
  writeFileSync(path, "as it was");
  const fd = openSync(path, "r");
  const { stream, text } = taken();
  let made = 0;
  const way = straight(fd, () => {
    made += 1;
    return stream;
  });
  way.write("first, ");
  way.write("second");
  closeSync(fd);
  expect(way.isDone()).toBe(false);
  expect([made, text(), readFileSync(path, "utf8")]).toEqual([1, "first, second", "as it was"]);
});
