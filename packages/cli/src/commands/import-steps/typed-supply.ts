// The supply of a leak-down that the sheet does not name: typed, it stands in the map as a condition of every test.

import { type ImportMap, conditionCell } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { usage } from "../usage.ts";

const columns = ["regulated_psi", "regulated_kPa", "regulated_bar"] as const;

/** @throws Stop 2 for what is no supply pressure, or where the map says one already */
export const withSupply = (map: ImportMap, args: Args): ImportMap => {
  const typed = args.text("regulated");
  if (typed === undefined) return map;
  const cell = conditionCell("regulated", typed, columns);
  if (!cell.ok) throw usage("condition-bad", cell.found, cell.expected, cell.mend);
  const { conditions = {} } = map;
  const meant = { fixed: cell.text };
  const said = columns.find((name) => conditions[name] !== undefined);
  if (
    said !== undefined &&
    JSON.stringify({ [said]: conditions[said] }) !== JSON.stringify({ [cell.column]: meant })
  )
    throw usage(
      "from-and-option",
      `--regulated, and the sheet or its map has ${said}`,
      "one of the two: an option fills what the sheet leaves open",
      "leave --regulated out",
    );
  return { ...map, conditions: { ...conditions, [cell.column]: meant } };
};
