// What to measure while the engine is open: the minutes of each, what it is held against, and where it is entered.

import type { DecisionAssessment, LimitPlace, MeasureNow } from "@sealtrend/core/parts";
import type { Room } from "./decide-room.ts";
import { isOpen, isTestedOpen } from "./decide-words.ts";
import { limitLine } from "../limit-to-set.ts";
import { prose } from "../prose.ts";

/** Without a leak-down that is the next test anyway: it is told there. What no reading of sealing sees, gaps and bearings, first. */
const measuredNow = (assessment: DecisionAssessment): readonly MeasureNow[] =>
  assessment.measureNow
    .filter(({ code }) => !(code === "leak-down" && isTestedOpen(assessment)))
    .toSorted((a, b) => first.indexOf(a.code) - first.indexOf(b.code));

const first: readonly MeasureNow["code"][] = [
  "again",
  "ring-gaps",
  "bearing-clearance",
  "journals",
  "rod-side",
  "ring-grooves",
  "bores",
  "valves",
  "leak-down",
];

/** The minutes of all that is named. */
export const measureMinutes = (assessment: DecisionAssessment): number => sum(measuredNow(assessment));

/** `measure    25 minutes for one of each, before you close it: bore 3 at three heights (10); …`, and the limits. */
export const measureLines = (
  assessment: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const all = measuredNow(assessment);
  if (all.length === 0) return [];
  const isBrief = room.measure !== "full";
  const each = all.length === 1 ? "" : " for one of each";
  const total = `${String(measureMinutes(assessment))} minutes${each}, ${untilText(assessment)}`;
  const [soon, later] = inTwenty(all).map((some) =>
    some
      .map((one) => `${isBrief ? briefly(one) : one.text} (${String(one.minutes)})`)
      .join(isBrief ? ", " : "; "),
  );
  const named =
    later === undefined || later === "" ? (soon ?? "") : `first ${soon ?? ""}; after that ${later}`;
  const enter = `then: sealtrend teardown ${assessment.history.record.engine.id}`;
  const held = limitsText(assessment, room);
  if (room.measure === "minutes") return prose(`${total} (--why); ${enter}`, width, "measure    ");
  return [
    ...prose(`${total}: ${named}; ${enter}`, width, "measure    "),
    ...(room.limits === 0 || held === "" ? [] : prose(held, width, "held to    ")),
  ];
};

/** What fits twenty minutes, in its order, and the rest; all of it where even the first does not. */
const inTwenty = (all: readonly MeasureNow[]): readonly (readonly MeasureNow[])[] => {
  const fits = all.filter((_, i) => sum(all.slice(0, i + 1)) <= 20);
  return fits.length === 0 || fits.length === all.length ? [all] : [fits, all.slice(fits.length)];
};

const sum = (some: readonly MeasureNow[]): number => some.reduce((total, { minutes }) => total + minutes, 0);

/** What the figures will be held against, or how the first limit is set; empty where none could be. */
const limitsText = (assessment: DecisionAssessment, room: Room): string => {
  const limits = measuredNow(assessment).flatMap((one) => one.limits.map(({ text }) => text));
  const line = settingLine(assessment);
  if (limits.length === 0) return line === "" ? "" : `no limits yet; from the manual, such as: ${line}`;
  const shown = [...new Set(limits)].slice(0, room.limits);
  const more = new Set(limits).size - shown.length;
  return `${shown.join("; ")}${more > 0 ? `; and ${String(more)} more (--why)` : ""}`;
};

/** Paragraphs, not wrapped: what to measure, the line to type, and the limits. */
export const measureTexts = (assessment: DecisionAssessment): readonly string[] => [
  ...measuredNow(assessment).map(({ text, minutes, command, typed, order, limits }) => {
    const line = typed.length === 0 ? "" : `, which takes lines such as "${typed.join('", "')}"`;
    const told = order === undefined ? "" : ` (${order})`;
    const held = limits.length === 0 ? "" : ` Held to: ${limits.map(limitText).join("; ")}.`;
    return `Measure, ${String(minutes)} minutes: ${text}. Kept by: ${command}${line}${told}.${held}`;
  }),
  ...settingText(assessment),
];

/** How limits are set, where none is. */
const settingText = (assessment: DecisionAssessment): readonly string[] => {
  const isBare = measuredNow(assessment).every(({ limits }) => limits.length === 0);
  const line = settingLine(assessment);
  return isBare && line !== ""
    ? [`Limits to hold them to, from the maker's manual, one by one, such as: ${line}`]
    : [];
};

/** The limit of the first that is measured. */
const settingLine = (assessment: DecisionAssessment): string => {
  const { id, clearances } = assessment.history.record.engine;
  const wanted = assessment.measureNow.flatMap(({ code }) => judgedBy[code] ?? []);
  return limitLine(id, wanted, clearances[0]?.unit ?? "mm");
};

const judgedBy: Readonly<Partial<Record<MeasureNow["code"], Pick<LimitPlace, "part" | "quantity">>>> = {
  bores: { part: "bore", quantity: "taper" },
  "ring-gaps": { part: "ring", quantity: "end gap" },
  "ring-grooves": { part: "ring", quantity: "side clearance" },
  "rod-side": { part: "rod", quantity: "side clearance" },
  "bearing-clearance": { part: "rod bearing", quantity: "clearance" },
  journals: { part: "pin", quantity: "taper" },
};

const limitText = ({ text, source }: MeasureNow["limits"][number]): string =>
  source === undefined ? text : `${text}, ${source}`;

const untilText = (assessment: DecisionAssessment): string => {
  const { basis } = assessment.decision;
  if (basis === "opportunity" || basis === "needed") return "before you order";
  return isOpen(assessment) ? "before you close it" : "before it goes back";
};

/** Of what is measured again which part, without how. */
const briefly = ({ code, text }: MeasureNow): string =>
  code === "again" ? (/^[^:;]*/.exec(text)?.[0] ?? text) : brief[code];

const brief: Readonly<Record<Exclude<MeasureNow["code"], "again">, string>> = {
  bores: "a bore at three heights",
  "ring-gaps": "a ring gap",
  "ring-grooves": "a ring groove",
  "rod-side": "a rod's side clearance",
  "bearing-clearance": "a rod and a main bearing",
  journals: "a rod and a main journal",
  valves: "valves, by fuel in the ports",
  "leak-down": "a leak-down, if it can be turned",
};
