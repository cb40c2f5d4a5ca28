// How long the engine will be kept: as typed, or asked once.

import { type Engine, type OwnedFor, ownedForOf } from "@sealtrend/core/parts";
import type { Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { usage } from "../usage.ts";

/** What was typed; else, where engine.json is silent too and a person can be asked, the answer. Undefined: nobody said.
 *  @throws Stop 2 for what is no time, or when the person leaves */
export const ownershipOf = async (
  args: Args,
  io: Io,
  { ownedFor }: Pick<Engine, "ownedFor">,
): Promise<OwnedFor | undefined> => {
  const typed = args.text("own");
  if (typed !== undefined) {
    const owned = ownedForOf(typed);
    if (owned === undefined) throw notOwned(typed);
    return owned;
  }
  return ownedFor === undefined && io.interactive && !args.flag("json") ? await asked(io) : undefined;
};

const question =
  "how long will you keep this engine: 5y, 11y, for-good … (Enter = not sure, 5 years are taken): ";

const asked = async (io: Io): Promise<OwnedFor | undefined> => {
  for (;;) {
    const answer = (await io.ask(question))?.trim();
    if (answer === "") return undefined;
    if (answer === undefined || answer === "q")
      throw usage("left", "nothing was decided", "an answer, or Enter", "sealtrend decide --own 5y");
    const bare = /^\d+(?:[.,]\d+)?$/.test(answer) ? `${answer}y` : answer;
    const owned = ownedForOf(bare) ?? ownedForOf(inYears(bare) ?? "");
    if (owned !== undefined) return owned;
  }
};

const notOwned = (typed: string): Stop =>
  usage(
    "own-bad",
    `--own "${typed}"`,
    "years you will keep it, 0.1 to 100, such as 5y, or 1.5y for 18 months; or for-good",
    `--own ${inYears(typed) ?? "5y"}`,
  );

/** `18 months` as `1.5y`; undefined where no number of months or years stands in it. */
const inYears = (typed: string): string | undefined => {
  const [, number = "", unit = ""] = /^(\d+(?:[.,]\d+)?)\s*([a-z]*)$/i.exec(typed.trim()) ?? [];
  const value = Number(number.replace(",", "."));
  const years = /^m/i.test(unit) ? Math.max(0.1, Number((value / 12).toFixed(2))) : value;
  return number !== "" && years >= 0.1 && years <= 100 ? `${String(years)}y` : undefined;
};
