// Two gauges beside one engine, and the lines that calibrate them.

import { type Desk, deskWithPump } from "./desk.ts";

export const calibrate = ["gauge", "calibrate"] as const;

export const deskWithGauges = async (...more: readonly string[]): Promise<Desk> => {
  const desk = await deskWithPump();
  await desk.type(["gauge", "add", "cheapo", "--kind", "leak-down", "--unit", "psi", ...more]);
  await desk.type(["gauge", "add", "red", "--kind", "compression", "--unit", "psi"]);
  return desk;
};

export const cellOf = (desk: Desk, gauge: string, column: string): string | undefined => {
  const [header = "", ...rows] = desk.text("logbook/gauges.csv").split("\n");
  const row = rows.find((line) => line.startsWith(`${gauge},`)) ?? "";
  return row.split(",")[header.split(",").indexOf(column)];
};

export const speeds = [
  ...calibrate,
  "red",
  "--engine",
  "pump",
  "--slow",
  "180rpm",
  "--slow-reads",
  "171 172 172",
  "--fast",
  "260rpm",
  "--fast-reads",
  "190 191 190",
  "--altitude",
  "0m",
  "--date",
  "2026-05-03",
] as const;
