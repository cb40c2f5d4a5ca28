// What to measure while the engine is open: the minutes of each, what it is held against, and where it is entered.

import { type DecisionAssessment, type MeasureNow, engineFields, typedExample } from "@sealtrend/core";
import type { Room } from "./decide-room.ts";
import { isOpen, isTestedOpen } from "./decide-words.ts";
import { prose } from "../prose.ts";

/** Without a leak-down that is the next test anyway: it is told there. */
export const measuredNow = (assessment: DecisionAssessment): readonly MeasureNow[] =>
  assessment.measureNow.filter(({ code }) => !(code === "leak-down" && isTestedOpen(assessment)));

/** The minutes of all that is named. */
export const measureMinutes = (assessment: DecisionAssessment): number =>
  measuredNow(assessment).reduce((sum, { minutes }) => sum + minutes, 0);

/** `measure    25 minutes for one of each, before you close it: bore 3 at three heights (10); …`, and the limits. */
export const measureLines = (
  assessment: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const all = measuredNow(assessment);
  if (all.length === 0) return [];
  const isBrief = room.measure !== "full";
  const named = all.map(({ code, text, minutes }) => `${isBrief ? brief[code] : text} (${String(minutes)})`);
  const total = `${String(measureMinutes(assessment))} minutes for one of each, ${untilText(assessment)}`;
  const enter = `then: sealtrend teardown ${assessment.history.record.engine.id}`;
  if (room.measure === "minutes") return prose(`${total} (--why); ${enter}`, width, "measure    ");
  return [
    ...prose(`${total}: ${named.join(isBrief ? ", " : "; ")}; ${enter}`, width, "measure    "),
    ...(room.limits === 0 ? [] : prose(limitsText(assessment, room), width, "held to    ")),
  ];
};

/** What the figures will be held against, or where limits are set. */
const limitsText = (assessment: DecisionAssessment, room: Room): string => {
  const limits = measuredNow(assessment).flatMap((one) => one.limits.map(({ text }) => text));
  const { id } = assessment.history.record.engine;
  if (limits.length === 0) return `no limits yet: sealtrend engine set ${id} ${path} '…'`;
  const shown = limits.slice(0, room.limits);
  const more = limits.length - shown.length;
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
  const all = measuredNow(assessment);
  const field = engineFields[path];
  if (field === undefined || all.length === 0 || all.some(({ limits }) => limits.length > 0)) return [];
  const set = `sealtrend engine set ${assessment.history.record.engine.id} ${path}`;
  return [`Limits to hold them to, from the maker's manual: ${set} '${typedExample(field)}'`];
};

const path = "limits.clearances";

const limitText = ({ text, source }: MeasureNow["limits"][number]): string =>
  source === undefined ? text : `${text}, ${source}`;

const untilText = (assessment: DecisionAssessment): string => {
  const { basis } = assessment.decision;
  if (basis === "opportunity" || basis === "needed") return "before you order";
  return isOpen(assessment) ? "before you close it" : "before it goes back";
};

const brief: Readonly<Record<MeasureNow["code"], string>> = {
  bores: "a bore at three heights",
  "ring-gaps": "a ring gap",
  "ring-grooves": "a ring groove",
  "rod-side": "a rod's side clearance",
  "bearing-clearance": "a rod and a main bearing",
  journals: "a rod and a main journal",
  valves: "valves, by fuel in the ports",
  "leak-down": "a leak-down, if it can be turned",
};
