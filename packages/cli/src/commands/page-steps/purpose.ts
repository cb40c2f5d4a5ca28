// Whom a page is for.

import type { Args } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";
import { usage } from "../usage.ts";

export const purposes = ["shop", "buyer", "file"] as const;
export type Purpose = (typeof purposes)[number];

/** @throws Stop 2 where it was not said: what is on a page depends on who will read it, so it is never guessed */
export const purposeOf = (args: Args): Purpose => {
  const typed = args.text("for");
  const purpose = purposes.find((one) => one === typed);
  if (purpose !== undefined) return purpose;
  throw usage(
    "page-for-missing",
    "whom the page is for was not said",
    "--for shop, --for buyer or --for file: each holds other things",
    typedLine(["page", ...args.positionals, "--for", "buyer", ...logbookOf(args)]),
  );
};

const logbookOf = (args: Args): readonly string[] => {
  const logbook = args.text("logbook");
  return logbook === undefined ? [] : ["--logbook", logbook];
};

/** @throws Stop 2 where private notes are asked for on the sheet that has no place for them */
export const refuseNotes = (args: Args, purpose: Purpose): void => {
  if (purpose === "shop" && args.flag("with-notes"))
    throw usage(
      "page-notes-shop",
      "--with-notes with --for shop",
      "no private notes on the sheet for the shop: it says what to measure and to cut",
      "leave --with-notes out; for a page with them: --for file, or --for buyer --with-notes",
    );
};
