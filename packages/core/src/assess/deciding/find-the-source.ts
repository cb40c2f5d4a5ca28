// Where damage comes from: found before anything is closed up or ordered.

import { type Step, minutes, own } from "./own-step.ts";
import type { Row } from "./row.ts";

/** Chunks first, then a knock, then gas in the coolant, then what was seen. Common practice, no source. */
export const findTheSource: Step = ({ rows, damage, decision: { access } }) => {
  const of = (id: Row["row"]): Row | undefined => rows.find(({ row }) => row === id);
  const pan = access === "bottom-open" || access === "fully-open" ? "" : "pan off, ";
  const page = { how: "teardown" } as const;
  if (of("F3") !== undefined)
    return own(
      "find-the-source",
      `find where the metal comes from: ${pan}caps off one by one, shells and journals, then skirts and rings`,
      page,
    );
  const knock = of("G1");
  if (knock !== undefined)
    return own(
      "find-the-source",
      `find the knock: ${pan}rod cap of cylinder ${knock.cylinder ?? "1"} off, its shell, pin and clearance, then the mains`,
      page,
    );
  if (of("H2") !== undefined)
    return access === "head-off" || access === "fully-open"
      ? own(
          "find-the-source",
          "find where the gas got in: head and deck under the straightedge, the gasket, cracks at the shop",
          page,
        )
      : own("find-the-source", "find where the gas gets in: leak-down, and watch the coolant for bubbles", {
          minutes: minutes.leakDown,
          how: "leak-down",
        });
  return own("find-the-source", damage[0]?.first ?? "find where it comes from", page);
};
