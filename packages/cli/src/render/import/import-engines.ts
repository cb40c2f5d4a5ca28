// The engines of an import: those that are to be made, and those that are there.

import type { EnginePlan } from "../../commands/import-steps/engine-plans.ts";
import { readingsIn } from "../../commands/import-steps/readings-in.ts";
import { grid, wrapText } from "../table.ts";
import { fewOf, several, spanText } from "./import-words.ts";

const takesPart = ({ placed }: EnginePlan): boolean => placed.added.length > 0;

/** A line a number of cylinders for the new ones, a line for the others. */
export const engineLines = (
  plans: readonly EnginePlan[],
  { width, done }: { readonly width: number; readonly done: "to do" | "done" },
): readonly string[] => {
  const fresh = plans.filter((plan) => plan.state === "new" && takesPart(plan));
  const there = plans.filter((plan) => plan.state === "there" && takesPart(plan));
  const counts = [...new Set(fresh.map(({ cylinders }) => cylinders.length))].sort((a, b) => a - b);
  const unfired = fresh.find(({ ignition }) => ignition === "unknown")?.id;
  const mend =
    done === "done"
      ? `sealtrend\u00a0engine\u00a0set\u00a0${unfired ?? ""}\u00a0ignition\u00a0spark`
      : "--ignition\u00a0spark, or the map says it";
  return [
    ...counts.flatMap((count, i) => {
      const own = fresh.filter(({ cylinders }) => cylinders.length === count);
      const text = `${several(own.length, "engine")} of ${several(count, "cylinder")}: ${namesOf(own)}`;
      return wrapText(text, width, i === 0 ? "new    " : "       ");
    }),
    ...(unfired === undefined ? [] : wrapText(`how they fire is not known: ${mend}`, width, "       ")),
    ...(there.length === 0
      ? []
      : wrapText(`${several(there.length, "engine")}: ${namesOf(there)}`, width, "there  ")),
  ];
};

const namesOf = (plans: readonly EnginePlan[]): string =>
  fewOf(
    plans.map(({ id }) => id),
    6,
  );

/** A line an engine, for --why. */
export const engineTable = (plans: readonly EnginePlan[], width: number): readonly string[] => {
  const rows = plans.map(({ id, state, cylinders, sheetNames, placed }) => [
    id,
    state,
    cylinders.join(" "),
    String(readingsIn(placed.added)),
    String(readingsIn(placed.recorded)),
    spanText([...placed.added, ...placed.recorded]),
    sheetNames.join(", "),
  ]);
  const head = ["engine", "", "cylinders", "to add", "recorded", "days", "in the sheet"];
  return grid(rows, ["left", "left", "left", "right", "right", "left", "left"], { head, width });
};
