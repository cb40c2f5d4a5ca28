// The screen of `how`: what must be so first, what can hurt, the steps, what makes the reading worthless.

import type { Procedure } from "@sealtrend/core";
import { wrapText } from "./table.ts";
import { padEnd } from "./width.ts";

export interface HowOptions {
  readonly width: number;
  /** `why` puts its source under each line. */
  readonly detail: "short" | "why";
}

/** The lines of a procedure are 72 columns at most, so that they fit 80 with this. */
const margin = 8;

/** Cautions stand before the steps, their mark in capitals: they are read before the first hand is laid on. */
export const howScreen = (procedure: Procedure, { width, detail }: HowOptions): readonly string[] => {
  const { title, before, cautions, steps, voids, refused, sources } = procedure;
  const line = (text: string, lead: string): readonly string[] => {
    const typed = text.replace(/sealtrend .*/, (command) => command.replaceAll(" ", "\u00a0"));
    const source = sources.find((one) => one.text === text)?.source ?? "";
    const shown = detail === "why" ? wrapText(`(${source})`, width, " ".repeat(margin)) : [];
    return [...wrapText(typed, width, lead), ...shown];
  };
  const part = (mark: string, lines: readonly string[]): readonly string[] =>
    lines.flatMap((text, i) => line(text, padEnd(i === 0 ? mark : "", margin)));
  const numbered = (mark: string, lines: readonly string[]): readonly string[] =>
    lines.flatMap((text, i) => line(text, `${padEnd(i === 0 ? mark : "", margin - 2)}${String(i + 1)} `));
  const parts = [
    [...wrapText(title, width), ...(refused === undefined ? [] : wrapText(refused, width))],
    part("first", before),
    part("CARE", cautions),
    refused === undefined ? numbered("do", steps) : part("instead", steps),
    part("void if", voids),
  ].filter((lines) => lines.length > 0);
  return parts.flatMap((lines, i) => (i < 2 ? lines : ["", ...lines]));
};
