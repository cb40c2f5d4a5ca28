// `engine set` of one limit of a part: `limits.bore.taper.wear "up to 0.10mm, manual p. 62"`.

import {
  type LimitPlace,
  type TypedLimit,
  limitExample,
  limitMeant,
  limitSlip,
  limitTyped,
  readTypedLimit,
} from "@sealtrend/core/parts";
import { withLimit, withoutLimit } from "../logbook/edit-limit.ts";
import { typedLine } from "../options/quote.ts";
import { usage } from "./usage.ts";

interface Wanted {
  readonly id: string;
  readonly path: string;
  readonly typed: string;
  readonly limit: LimitPlace;
}

/** The text of engine.json with the limit, or without it for `-`.
 *  @throws Stop 2 for a limit that cannot be read, that cannot be meant, or in another unit than its fellow  */
export const limitEdit = ({ id, path, typed, limit }: Wanted): ((text: string) => string | undefined) => {
  if (typed === "-") return (text) => withoutLimit(text, limit);
  const value = readTypedLimit(typed);
  if (value === undefined) throw unread({ id, path, typed, limit });
  stopOnSlip({ id, path, typed, limit }, value);
  return (text) => {
    const after = withLimit(text, limit, value);
    if (after === undefined || "text" in after) return after?.text;
    throw otherUnit({ id, path, typed, limit }, value, after.unit);
  };
};

const expected = "a range such as 0.03 to 0.07mm, up to 0.10mm or from 0.8mm; the source behind a comma";

const unread = ({ id, path, typed, limit }: Wanted) => {
  const [meant = limitExample(limit, "mm"), second] = limitMeant(typed, limit);
  const line = typedLine(["engine", "set", id, path, second ?? meant]);
  const which = second === undefined ? "" : `"${meant}" if inches; if millimetres: `;
  return usage("field-bad", `${path} "${typed}"`, expected, which + line);
};

/** @throws Stop 2 for ends the wrong way round, far too large, or against the wear, with what may have been meant */
const stopOnSlip = ({ id, path, typed, limit }: Wanted, { low, high, unit, source }: TypedLimit): void => {
  const slip = limitSlip([low ?? null, high ?? null], { ...limit, unit });
  if (slip === undefined) return;
  const meant = limitTyped(slip.ends, slip.unit) + (source === undefined ? "" : `, ${source}`);
  const line = typedLine(["engine", "set", id, path, meant]);
  throw usage("field-bad", `${path} "${typed}"`, slip.expected, line);
};

const otherUnit = ({ id, path, typed, limit }: Wanted, { unit }: TypedLimit, kept: string) =>
  usage(
    "field-bad",
    `${path} "${typed}": its other limit stands in ${kept}`,
    `both in ${kept}`,
    `type it in ${kept}, or take the other one out first: ${typedLine([
      ...["engine", "set", id],
      path.replace(/[^.]+$/, limit.kind === "new" ? "wear" : "new"),
      "-",
    ])}; nothing in ${unit} was written`,
  );
