// What a page holds, before it is HTML, text or JSON: one model, so that the three say the same.

import type { PressureUnit } from "@sealtrend/core";

/** One printed page, or a few. */
export interface Page {
  readonly title: string;
  /** Beneath the title: what engine, which day, whose page. */
  readonly under: readonly string[];
  readonly sections: readonly PageSection[];
  readonly foot: readonly string[];
}

export interface PageSection {
  /** A word for scripts; the heading may differ from engine to engine. */
  readonly code: string;
  readonly heading: string;
  readonly blocks: readonly PageBlock[];
  /** Half the width of the paper is enough: two such sections stand side by side. */
  readonly room?: "half";
}

export type PageBlock =
  | TextBlock
  | ListBlock
  | FactsBlock
  | BlanksBlock
  | TicksBlock
  | TableBlock
  | StripsBlock
  | DotsBlock
  | SketchBlock
  | BesideBlock;

/** A paragraph. `lead`: the answer; `small`: how to read it. */
export interface TextBlock {
  readonly kind: "text";
  readonly text: string;
  readonly role?: "lead" | "small";
}

export interface ListBlock {
  readonly kind: "list";
  readonly items: readonly string[];
}

/** Names and what is known under them. */
export interface FactsBlock {
  readonly kind: "facts";
  readonly items: readonly { readonly name: string; readonly value: string }[];
}

/** To be filled in by hand; a `given` value is printed in its place. */
export interface BlanksBlock {
  readonly kind: "blanks";
  readonly items: readonly { readonly name: string; readonly given?: string; readonly width?: "wide" }[];
}

/** To be ticked by hand. In a text `___` is a place to write on. */
export interface TicksBlock {
  readonly kind: "ticks";
  readonly items: readonly { readonly text: string; readonly weight?: "strong" }[];
}

/** A cell: its text, a second line beneath it, or a place to write or tick by hand. */
export interface PageCell {
  readonly text: string;
  readonly second?: string;
  /** `plain`, `strong`: a verdict, quiet or not. */
  readonly role?: "blank" | "tick" | "plain" | "strong";
}

export interface PageColumn {
  readonly name: string;
  readonly align: "left" | "right";
  /** Columns side by side under one heading. */
  readonly group?: string;
}

/** The first cell of a row is its heading. */
export interface PageRow {
  readonly cells: readonly (string | PageCell)[];
  /** It holds nothing yet: a text leaves it out. */
  readonly use?: "to-fill-in";
  /** The heading of the row above holds for this one as well: its first cell is not drawn. */
  readonly joins?: "above";
}

export interface TableBlock {
  readonly kind: "table";
  readonly caption: string;
  /** Its heading says it to the eye: the caption is for the ear alone. */
  readonly heard?: "only";
  readonly columns: readonly PageColumn[];
  readonly rows: readonly PageRow[];
}

/** What the values of a chart are, in SI: a ratio to the others less 1, a pressure [Pa], a fraction held or lost. */
export type ChartQuantity = "against-others" | "pressure" | "held" | "lost";

/** Each cylinder over the years, a strip each. */
export interface StripsBlock {
  readonly kind: "strips";
  /** Names the chart among the others of the page. */
  readonly id: string;
  readonly caption: string;
  readonly quantity: ChartQuantity;
  /** Of pressures, as printed. */
  readonly unit: PressureUnit;
  readonly tests: readonly {
    readonly date: string;
    /** Place in `gauges`. */
    readonly gauge: number;
    /** `aside`: its owner set it aside; `no`: it does not count for another reason. */
    readonly counts: "yes" | "no" | "aside";
  }[];
  readonly gauges: readonly string[];
  readonly cylinders: readonly Strip[];
  readonly works: readonly {
    readonly date: string;
    readonly text: string;
    readonly cylinders: readonly string[];
  }[];
  readonly limit?: { readonly value: number; readonly text: string };
}

export interface Strip {
  readonly label: string;
  /** One a test; undefined: not read. */
  readonly values: readonly (number | undefined)[];
  /** Places of tests in which it held nothing. */
  readonly nothing: readonly number[];
  /** Places of tests that begin a new history: no line is drawn to them. */
  readonly anew: readonly number[];
  /** The first and the last reading that count, as the history gives them; a lone one in both. */
  readonly ends?: { readonly first: string; readonly last: string };
  /** The last that counted before its history began anew. */
  readonly before?: string;
  readonly course: string;
  /** The course without its interval, where there is little room. */
  readonly word: string;
}

/** The newest test: as read beside corrected, cylinder by cylinder. */
export interface DotsBlock {
  readonly kind: "dots";
  readonly id: string;
  readonly caption: string;
  readonly quantity: ChartQuantity;
  readonly unit: PressureUnit;
  readonly labels: readonly string[];
  readonly series: readonly DotSeries[];
  readonly limit?: { readonly value: number; readonly text: string };
}

export interface DotSeries {
  readonly name: string;
  readonly mark: "hollow" | "filled";
  readonly values: readonly (number | undefined)[];
  /** Twice the standard uncertainty, where it is known. */
  readonly doubt?: readonly (number | undefined)[];
}

/** Room to draw in, with an arrow to the front of the engine. */
export interface SketchBlock {
  readonly kind: "sketch";
  readonly caption: string;
}

/** Blocks side by side where the paper is wide enough. */
export interface BesideBlock {
  readonly kind: "beside";
  readonly blocks: readonly (TableBlock | DotsBlock | SketchBlock)[];
}

/** A place to write on, in a text. */
export const blank = "___";
