// What is made again of a leak-down alone. Readings invented.

import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";

test("a leak-down alone that was made cold is made again warm, by the same page on all screens", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);
  for (const [date, third, state] of [
    ["2025-05-07", "53", "warm"],
    ["2026-05-07", "51", "cold"],
  ] as const)
    await desk.type([
      ...["enter", "pump", "--date", date, "--leak-down", `74/80 74/80 ${third}/80 75/80`],
      ...["--unit", "psi", "--engine-temp", state],
    ]);
  for (const command of ["show", "decide"]) {
    const { out } = await desk.type([command, "pump", "--as-of", "2026-06-01"]);
    expect(out.replace(/\s+/g, " ")).toContain("run it warm and test again the same day");
    expect(out.match(/sealtrend how \S+ pump/g)).toEqual(["sealtrend how leak-down pump"]);
  }
});
