// Laws of the command `expect` that hold whatever is typed.

import fc from "fast-check";
import { run } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../cli/fake-io.ts";

const numbers = fc.constantFrom(
  ..."0 -1 .5 1 3.4 10 44 60 86 101 179.9 200 500 1013 3000 9000 999999999 .01 -300 x .".split(" "),
);
const quantity = (...units: readonly string[]) =>
  fc.tuple(numbers, fc.constantFrom(...units)).map((parts) => parts.join(""));
const lengths = quantity("mm", "m", "in", "");
const temperatures = quantity("K", "C", "F", "");
const pressures = quantity("kPa", "hPa", "inHg", "");

const values = {
  "compression-ratio": fc.constantFrom("10", "8", "1.0001", "21", "40", "0", "-3"),
  bore: lengths,
  stroke: lengths,
  rod: lengths,
  "intake-closes": quantity("deg", ""),
  speed: quantity("rpm", ""),
  hose: quantity("cm3", "L"),
  "leak-area": quantity("mm2"),
  wall: temperatures,
  start: temperatures,
  altitude: quantity("m", "ft", ""),
  "station-pressure": pressures,
  qnh: pressures,
  air: temperatures,
  heat: fc.constantFrom("hohenberg", "annand", "woschni", "none"),
  gamma: fc.constantFrom("variable", "1.4", "1.05", "1"),
  "engine-temp": fc.constantFrom("warm", "cold"),
  use: fc.constantFrom("motorcycle", "farm"),
  units: fc.constantFrom("psi", "us", "bar", "MPa"),
};
/** Some of the options, each with a value; the ratio always, so that more is looked at than its absence. */
const lines = fc
  .record(values, { requiredKeys: ["compression-ratio"] })
  .map((line) => Object.entries(line).flatMap(([name, value]) => [`--${name}`, value]));
/** One option beside a ratio: most of these are read. */
const single = fc
  .constantFrom(
    ...(Object.keys(values) as (keyof typeof values)[]).filter((name) => name !== "compression-ratio"),
  )
  .chain((name) => values[name].map((value) => ["--compression-ratio", "10", `--${name}`, value]));

const typed = async (words: readonly string[]) => {
  const io = fakeIo();
  return { exit: await run(["expect", ...words], io), out: io.stdout(), err: io.stderr() };
};

test("whatever is typed is answered or refused in words, and no answer holds a number that is none", async () => {
  await fc.assert(
    fc.asyncProperty(fc.oneof(lines, single), async (words) => {
      const { exit, out, err } = await typed(words);
      expect([exit === 0 || exit === 2, exit === 0 ? out !== "" : err !== ""]).toEqual([true, true]);
      expect(out).not.toMatch(/NaN|Infinity|undefined|\b0\.00000/);
    }),
    { numRuns: 600 },
  );
});
