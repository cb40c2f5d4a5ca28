// What to do after measuring: the decision with the engine as far open as it is, the sheet for the shop.

import type { MeasuredPart, Opening, PartCount, TeardownAssessment } from "@sealtrend/core";
import { limitLine } from "../limit-to-set.ts";
import { prose } from "../prose.ts";
import { joined } from "../words.ts";
import { partNamed, partsName } from "./teardown-words.ts";

/** What must be out for a part to be measured. */
const crankOut: readonly MeasuredPart[] = ["main", "main bearing"];
const pistonsOut: readonly MeasuredPart[] = ["piston", "ring", "pin"];
const bottomOpen: readonly MeasuredPart[] = ["rod bearing", "rod", "crank", "housing"];

/** How far open an engine is of which these parts were measured. */
export const openingOf = ({ items, findings }: Pick<TeardownAssessment, "items" | "findings">): Opening => {
  const parts = new Set([...items, ...findings].map(({ part }) => part));
  const any = (list: readonly MeasuredPart[]): boolean => list.some((part) => parts.has(part));
  const isCrankOut = items.some(({ part, quantity }) => crankOut.includes(part) && quantity === "diameter");
  if (isCrankOut) return "crank-out";
  if (any(pistonsOut)) return "pistons-out";
  const isBelow = any(bottomOpen) || any(crankOut);
  const isAbove = [...parts].some((part) => !bottomOpen.includes(part) && !crankOut.includes(part));
  if (isBelow) return isAbove ? "pistons-in" : "bottom-open";
  return "head-off";
};

/** Lines without line ends; the command stays whole. */
export const nextLines = (
  assessment: TeardownAssessment,
  { id, width }: { readonly id: string; readonly width: number },
): readonly string[] => {
  const whole = (command: string): string => command.replaceAll(" ", "\u00a0");
  const decide = `sealtrend decide ${id} --opened ${openingOf(assessment)}`;
  const page = `sealtrend page ${id} --for shop`;
  return [
    ...prose(whole(decide), width, "next   "),
    ...prose(`the sheet for the machine shop: ${whole(page)}`, width, "       "),
  ];
};

/** `Not measured: pin 5, mains 6 and 7.`; empty where all was. What is only usual for such an engine may be fewer in this. */
export const missingText = ({ counts }: TeardownAssessment, id: string): string => {
  const begun = counts.filter(({ measured, missing }) => measured > 0 && missing.length > 0);
  const none = counts.filter(({ measured, expected }) => measured === 0 && expected > 0);
  const some = begun.map(({ part, missing, quantity }) =>
    part === "crank"
      ? partNamed(part, missing).replace(part, quantity ?? part)
      : `${quantity === undefined ? "" : `${quantity} of `}${partNamed(part, missing)}`,
  );
  const whole = [...new Set(none.map(({ part }) => partsName(part)))];
  const said = [...new Set(some), ...(whole.length === 0 ? [] : [`no ${whole.join(", no ")}`])];
  if (said.length === 0) return "";
  return [
    `Not measured: ${said.join("; ")}.`,
    ...begun
      .filter(isMaybeFewer)
      .slice(0, 1)
      .map((one) => fewerText(one, id)),
  ].join(" ");
};

/** Whether the number is only usual for such an engine. */
const isMaybeFewer = ({ field, missing }: PartCount): boolean => field !== undefined && missing.length > 0;

/** With the number measured where the last of them are missing and most are there, else to be filled in. */
const fewerText = (
  { field = "layout.mains", expected, measured, missing }: PartCount,
  id: string,
): string => {
  const isLast = missing[0] === String(measured + 1) && 2 * measured >= expected;
  const number = isLast ? String(measured) : "N";
  const command = `sealtrend engine set ${id} ${field} ${number}`.replaceAll(" ", "\u00a0");
  const what = field === "layout.pins" ? "pins" : "mains";
  return `${String(expected)} ${what} are usual; if this engine has fewer: ${command}`;
};

/** `pin diameter and taper; main diameter`. */
const namesOf = (list: readonly { readonly part: MeasuredPart; readonly quantity: string }[]): string =>
  [...new Set(list.map(({ part }) => part))]
    .map((part) => {
      const own = list.filter((one) => one.part === part).map(({ quantity }) => quantity);
      return `${part} ${joined([...new Set(own)])}`;
    })
    .join("; ");

/** Figures that have nothing to be held against, how one is given a limit, and what no limit of lengths judges. */
export const withoutLimitText = (
  { withoutLimit, notJudged = [], items }: TeardownAssessment,
  id: string,
): string => {
  const unit = items.find(({ part }) => part === withoutLimit[0]?.part)?.unit ?? "mm";
  const line = limitLine(id, withoutLimit, unit);
  return [
    withoutLimit.length === 0 ? "" : `No limit recorded for ${namesOf(withoutLimit)}.`,
    notJudged.length === 0 ? "" : `Kept, not judged: ${namesOf(notJudged)}.`,
    line === "" ? "" : `A limit from the manual, such as: ${line}`,
  ]
    .filter((text) => text !== "")
    .join(" ");
};
