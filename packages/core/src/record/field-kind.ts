// What a field of engine.json may hold.

import type { Dimension } from "../quantity/index.ts";

/** What a field of engine.json may hold, with an example. */
export type FieldKind =
  | { readonly kind: "text"; readonly example?: string }
  | { readonly kind: "yes-no" }
  | {
      readonly kind: "word";
      readonly words: readonly string[];
      /** What a person may type for a word: `diesel`. It is not written into the file. */
      readonly also: Readonly<Record<string, string>>;
    }
  | {
      readonly kind: "number";
      readonly least: number;
      readonly most: number;
      readonly example: number;
      /** Something that is counted. */
      readonly whole?: true;
    }
  | { readonly kind: "quantity"; readonly dimension: Dimension; readonly example: string }
  /** One quantity, or two with a hyphen between them. */
  | {
      readonly kind: "range";
      readonly dimension: Dimension;
      readonly example: string;
      readonly range: string;
    }
  | { readonly kind: "labels" }
  | { readonly kind: "banks" }
  | { readonly kind: "curves"; readonly example: string }
  /** Money, 0 or more. */
  | { readonly kind: "price"; readonly example: number }
  | { readonly kind: "ownership" }
  /** A year or a day. */
  | { readonly kind: "since" }
  /** The maker's limits for parts. */
  | { readonly kind: "clearances"; readonly example: string }
  /** Over- and undersizes. */
  | { readonly kind: "offered"; readonly example: string };
