// Two gauges of which one reads some cylinders otherwise: said where repeats show it. Readings invented; F and its chance
// computed apart (Python, two-way analysis of variance of ln readings, scipy.stats.f).

import { expect, test } from "vitest";
import { compare, deskWith } from "./compared-desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const row = (gauge: string, take: number, cells: string): string =>
  `2026-05-03a,2026-05-03,dry,${String(take)},${gauge},psi,${cells},warm,350`;
const black = [row("black", 1, "150,140,160,130"), row("black", 2, "151,139,161,131")];
const oneLine = (text: string): string => text.replace(/\s+/g, " ");

interface Comparisons {
  readonly comparisons: readonly {
    readonly study: { readonly interaction: { readonly f: number; readonly p: number } };
    readonly refused?: { readonly text: string };
  }[];
}

test("a gauge that reads one cylinder otherwise is told by --why, and not without", async () => {
  const desk = await deskWith(...black, row("red", 1, "150,140,166,130"), row("red", 2, "151,141,167,131"));
  const document = await desk.json(...compare);
  expect(misfits(document, schemaOf("gauges"))).toEqual([]);
  const [pair] = (document as unknown as Comparisons).comparisons;
  expect(pair?.study.interaction.f).toBeCloseTo(12.7864, 6);
  expect(pair?.study.interaction.p).toBeCloseTo(0.0020258166, 8);
  const words =
    "Red and black differ more on some cylinders than on others, as their repeats tell (about 1 in 494 by chance): a hose, an adapter or a needle that does not start at zero does that.";
  expect(oneLine((await desk.type([...compare, "--why"])).out)).toContain(words);
  expect(oneLine((await desk.type([...compare])).out)).not.toContain("differ more on some");
});

test("gauges that differ alike on all cylinders are not said to differ more on some", async () => {
  const desk = await deskWith(...black, row("red", 1, "152,142,162,132"), row("red", 2, "153,141,163,133"));
  expect((await desk.type([...compare, "--why"])).out).not.toContain("differ more on some");
});

test("where the link is refused for it, the refusal says so in the same words", async () => {
  const desk = await deskWith(...black, row("red", 1, "150,140,195,130"), row("red", 2, "151,141,196,131"));
  const { exit, err } = await desk.type([...compare]);
  expect(exit).toBe(1);
  expect(oneLine(err)).toContain(
    "cylinder 3 does not go with the others; red and black differ more on some cylinders than on others, as their repeats tell (less than 1 in 1000 by chance)",
  );
});
