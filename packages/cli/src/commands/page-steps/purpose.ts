// Whom a page is for.

import type { Args } from "../../command.ts";
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
    "sealtrend page --for buyer",
  );
};
