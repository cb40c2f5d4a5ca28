// Gauges and testers beside one engine, read on one warm day.

import { type Desk, deskWithPump } from "./desk.ts";

export const compare = ["gauge", "compare"] as const;

/** Two compression gauges and two testers, and rows of tests.csv. */
export const deskWith = async (...rows: readonly string[]): Promise<Desk> => {
  const desk = await deskWithPump();
  for (const name of ["red", "black"])
    await desk.type(["gauge", "add", name, "--kind", "compression", "--unit", "psi", "--class", "2.5"]);
  for (const name of ["one", "two"])
    await desk.type(["gauge", "add", name, "--kind", "leak-down", "--unit", "psi", "--regulated", "80psi"]);
  const header = "test,date,what,take,gauge,unit,c1,c2,c3,c4,engine_temp,altitude_m";
  desk.put("logbook/pump/tests.csv", [header, ...rows, ""].join("\n"));
  return desk;
};

export const rowOf = (desk: Desk, gauge: string): string | undefined =>
  desk
    .text("logbook/gauges.csv")
    .split("\n")
    .find((line) => line.startsWith(`${gauge},`));

export const both = [
  "2026-05-03a,2026-05-03,dry,1,black,psi,150,140,160,130,warm,350",
  "2026-05-03a,2026-05-03,dry,1,red,psi,157.5,147,168,136.5,warm,350",
];
