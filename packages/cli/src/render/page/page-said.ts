// What `page` says on the terminal: where the page is, what is on it, what is not.

import type { Engine } from "@sealtrend/core";
import type { Page } from "./page-model.ts";
import { prose } from "../prose.ts";

export interface PageAbout {
  readonly engine: Engine;
  readonly purpose: "shop" | "buyer" | "file";
  readonly form: "html" | "text";
  readonly file: string;
  readonly bytes: number;
  readonly named: "typed" | "by-us";
}

const whose = { shop: "the shop", buyer: "a buyer", file: "your own file" } as const;

const notOnIt = {
  shop: "Not on it: prices, chances, private notes of tests and services. Fill in the lines by hand, tick what you ask for, keep a copy.",
  buyer:
    "Not on it: prices, decisions, private notes. Readings set aside or changed afterwards are on it, with the reason.",
  file: "All that is on record, with the decision: keep it to yourself. For others: --for buyer, --for shop.",
} as const;

/** Lines without line ends. */
export const pageSaid = (
  page: Page,
  { engine, purpose, form, file, bytes }: PageAbout,
  width: number,
): readonly string[] => [
  `written  ${file}, ${String(Math.max(1, Math.round(bytes / 1000)))} kB`,
  "",
  ...prose(
    `${engine.id} for ${whose[purpose]}: ${page.sections
      .map(({ heading }) => heading.replace(/,.*/, "").toLowerCase())
      .filter((text) => text !== "")
      .join(", ")}.`,
    width,
  ),
  ...prose(notOnIt[purpose], width),
  ...prose(
    form === "html"
      ? "Open it in any browser and print it, on A4 or Letter; it needs no network."
      : "Plain text of 76 columns, to be pasted into a message.",
    width,
    "next   ",
  ),
];
