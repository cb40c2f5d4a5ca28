// A desk with a sheet on it: the bytes of a sample, to be imported.

import { readFileSync } from "node:fs";
import { type Desk, newDesk } from "./desk.ts";

const samples = new URL("../import-samples/", import.meta.url);

/** @param names - of sample sheets */
export const deskWith = (...names: readonly string[]): Desk => {
  const desk = newDesk();
  for (const name of names) desk.put(name, readFileSync(new URL(name, samples)));
  return desk;
};

/** The rows of a new tests.csv by column name, only cells that hold something. */
export const rowsOf = (desk: Desk, engine: string): readonly Readonly<Record<string, string>>[] => {
  const [header = "", ...lines] = desk.text(`data/sealtrend/${engine}/tests.csv`).trimEnd().split("\n");
  const names = header.split(",");
  return lines.map((line) =>
    Object.fromEntries(
      line.split(",").flatMap((cell, i) => (cell === "" ? [] : [[names[i] ?? "", cell] as const])),
    ),
  );
};
