// The work that follows, in the order of asking, and the caution of the first line that can hurt. What has to be measured
// first is told apart: what settles it, what to check, what is missing.

import type { TeardownAssessment, WorkLine } from "@sealtrend/core";
import { commandsWhole } from "../commands-whole.ts";
import { prose } from "../prose.ts";
import { markedList } from "./teardown-listed.ts";

/** What is done to the engine, beside what has to be measured first. */
export const workOf = ({ work }: Pick<TeardownAssessment, "work">): readonly WorkLine[] =>
  work.filter(({ code }) => !measuring.includes(code));

/** @param most - lines told; the rest is counted  @param why - whether the figures that ask for it are told, or stand above */
export const workLines = (
  assessment: TeardownAssessment,
  { width, most, why }: { readonly width: number; readonly most: number; readonly why: "told" | "above" },
): readonly string[] =>
  markedList(
    "work",
    workOf(assessment).map((line) => commandsWhole(why === "told" ? workText(line) : line.text, longest)),
    { width, most },
  );

/** Columns: on a narrow screen the terminal breaks the line, and it is copied whole. */
const longest = 76;

const measuring: readonly WorkLine["code"][] = ["measure-better", "measure-missing"];

/** `bore to +0.50 mm, all four: bore 3 taper 0.12 mm`. */
const workText = ({ text, why }: WorkLine): string => (why === "" ? text : `${text}: ${why}`);

/** One caution at most: that of the first work that has one. */
export const careLines = ({ work }: TeardownAssessment, width: number): readonly string[] => {
  const caution = work.map((line) => line.caution).find((text) => text !== undefined);
  return caution === undefined ? [] : prose(caution, width, "CARE   ");
};
