// `engine set` of one limit of a part: `limits.bore.taper.wear "up to 0.10mm, manual p. 62"`.

import { type LimitPlace, type TypedLimit, limitExample, readTypedLimit } from "@sealtrend/core";
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
 *  @throws Stop 2 for a limit that cannot be read, or in another unit than its fellow  */
export const limitEdit = ({ id, path, typed, limit }: Wanted): ((text: string) => string | undefined) => {
  if (typed === "-") return (text) => withoutLimit(text, limit);
  const value = readTypedLimit(typed);
  if (value === undefined) throw unread({ id, path, typed, limit });
  return (text) => {
    const after = withLimit(text, limit, value);
    if (after === undefined || "text" in after) return after?.text;
    throw otherUnit({ id, path, typed, limit }, value, after.unit);
  };
};

const expected = "a range such as 0.03 to 0.07mm, up to 0.10mm or from 0.8mm; the source behind a comma";

const unread = ({ id, path, typed, limit }: Wanted) => {
  const isBare = readTypedLimit(`up to ${typed}`) !== undefined;
  const mend = isBare ? `up to ${typed.trim()}` : limitExample(limit, "mm");
  return usage("field-bad", `${path} "${typed}"`, expected, typedLine(["engine", "set", id, path, mend]));
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
