// An engine with a dry test for each line, and what `history` says of it.

import { type Desk, newDesk } from "./desk.ts";

/** @param lines - `2020-05-03: 150 148`, psi  @param conditions - of every test, as `enter` takes them */
export const deskWith = async (
  lines: readonly string[],
  fields: readonly string[] = [],
  conditions: readonly string[] = [],
): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const count = lines[0]?.split(": ")[1]?.split(" ").length ?? 4;
  await desk.type(["engine", "add", "pump", "--cylinders", String(count), "--ignition", "spark", ...fields]);
  for (const line of lines) {
    const [date = "", readings = ""] = line.split(": ");
    const { exit, err } = await desk.type([
      "enter",
      "pump",
      "--date",
      date,
      "--dry",
      readings,
      "--unit",
      "psi",
      ...conditions,
    ]);
    if (exit !== 0) throw new Error(err);
  }
  return desk;
};

export const said = async (desk: Desk, ...words: string[]): Promise<string> =>
  (await desk.type(["history", "pump", ...words], { width: 200 })).out;

/** One test a year, on the same day. */
export const yearly = (from: number, rows: readonly string[]): string[] =>
  rows.map((row, i) => `${String(from + i)}-05-03: ${row}`);

/** Where every test was cranked alike, no change of the engine may be the starter's. */
export const oneSpeed: readonly string[] = ["--speed", "250rpm"];
