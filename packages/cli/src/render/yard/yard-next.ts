// The one thing to type next, under the rows of a yard.

import { join } from "node:path";
import type { YardRow } from "@sealtrend/core/parts";
import { typedLine } from "../../options/quote.ts";
import { wrapText } from "../table.ts";

/** Where the rows came from, as it was typed: undefined where the logbook was found without being named. */
export interface YardFrom {
  readonly kind: "file" | "logbook";
  readonly typed?: string;
}

/** @param row - the first of the table */
export const nextLines = ({ engine }: YardRow, { kind, typed }: YardFrom, width: number): readonly string[] =>
  wrapText(kind === "file" ? ofFile(typed) : ofLogbook(engine, typed), width, "next   ");

const ofFile = (typed: string | undefined): string => {
  const isFile = typed !== undefined && typed !== "-";
  const from = isFile ? "" : "save it as a file; ";
  const command = typedLine(["import", isFile ? typed : "FILE.csv"]);
  return `${from}decide tells more of what is in a logbook: ${command}`;
};

/** Of a folder of logbooks an engine is named with its logbook before it. */
const ofLogbook = (engine: string, typed: string | undefined): string => {
  const at = engine.lastIndexOf("/");
  const id = engine.slice(at + 1);
  if (typed === undefined) return typedLine(["decide", id]);
  return typedLine(["decide", id, "--logbook", at < 0 ? typed : join(typed, engine.slice(0, at))]);
};
