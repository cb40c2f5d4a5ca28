// The line that sets a limit which is missing, ready to type.

import {
  type LengthUnit,
  type LimitPlace,
  limitExample,
  limitPath,
  limitToBegin,
} from "@sealtrend/core/parts";
import { typedLine } from "../options/quote.ts";

/** `sealtrend engine set pump limits.bore.taper.wear "up to 0.10mm"`, the value in one piece; empty where none can be set.
 *  @param wanted - figures without a limit, of which one is taken */
export const limitLine = (
  id: string,
  wanted: readonly Pick<LimitPlace, "part" | "quantity">[],
  unit: LengthUnit,
): string => {
  const place = limitToBegin(wanted);
  if (place === undefined) return "";
  const value = limitExample(place, unit);
  return typedLine(["engine", "set", id, limitPath(place), value]).replace(
    value,
    value.replaceAll(" ", "\u00a0"),
  );
};
