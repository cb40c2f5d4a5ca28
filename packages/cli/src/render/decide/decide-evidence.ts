// What counted for wear and against it, a part a line of evidence, each with where it came from; and what nobody looked at.

import type { DecisionAssessment, FoundRow } from "@sealtrend/core";
import type { Room } from "./decide-room.ts";
import { joined } from "../words.ts";
import { prose } from "../prose.ts";

/** `for wear` and `against`: rows that counted, the heaviest line first; `set aside`: those that a guard keeps out. */
export const evidenceLines = (
  assessment: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const { evidence } = assessment;
  const counted = evidence.filter(({ use }) => use === "counted");
  const pro = counted.filter(speaksForWear);
  const con = counted.filter((row) => !speaksForWear(row));
  const aside = groupsText(
    evidence.filter(({ use }) => use === "set-aside"),
    room,
  );
  const both =
    counted.length === 0
      ? prose(`${noneText(assessment)}; nothing against it either`, width, leads.pro)
      : [
          ...prose(groupsText(pro, room) || nothing, width, leads.pro),
          ...prose(groupsText(con, room) || nothing, width, leads.con),
        ];
  return [...both, ...(aside === "" ? [] : prose(aside, width, leads.aside))];
};

const nothing = "nothing that counts";

/** Tests that are on file, and speak no more, are not none. */
const noneText = ({ speaks, test, notCounted }: DecisionAssessment): string =>
  speaks === "too-old" && test !== undefined
    ? `nothing that still counts: the last test${notCounted === undefined ? "" : " that counts"} is of ${test.test.date}`
    : nothing;

const leads = {
  pro: "for wear   ",
  con: "against    ",
  aside: "set aside  ",
  unseen: "not seen   ",
  ask: "find out   ",
  open: "unsettled  ",
} as const;

/** A row with points both ways says where it is worn, so it speaks for wear. */
export const speaksForWear = ({ points }: FoundRow): boolean =>
  Object.values(points).some((value) => value > 0);

/** Parts of one line of evidence stand together; where they came from is said once. */
const groupsText = (rows: readonly FoundRow[], room: Room): string => {
  const lines = [...new Set(rows.map(({ line }) => line))];
  const groups = lines
    .map((line) => rows.filter((row) => row.line === line).toSorted((a, b) => weight([b]) - weight([a])))
    .toSorted((a, b) => weight(b) - weight(a));
  const shown = groups.slice(0, room.groups);
  const rest = groups.slice(shown.length).map(([first]) => first?.line ?? "");
  return [
    ...shown.map((group) => groupText(group, room)),
    ...(rest.length === 0 ? [] : [`${joined(rest)} (--why)`]),
  ].join("; ");
};

const weight = (rows: readonly FoundRow[]): number =>
  Math.max(0, ...rows.flatMap(({ points }) => Object.values(points).map(Math.abs)));

const groupText = (rows: readonly FoundRow[], room: Room): string => {
  const texts = [...new Set(rows.map(({ text }) => text))];
  const places = [...new Set(rows.map(({ from: place }) => place))];
  const from = places.filter((place) => !places.some((other) => other !== place && holds(other, place)));
  const shown = texts.slice(0, room.texts);
  const more = texts.length > shown.length ? `, and ${String(texts.length - shown.length)} more` : "";
  return `${shown.join(", ")}${more} (${from.slice(0, room.places).join(", ")})`;
};

/** `tests a and b` names what `test b` names. */
const holds = (place: string, other: string): boolean => {
  const [, id] = /^test (\S+)$/.exec(other) ?? [];
  return id !== undefined && place.split(" ").includes(id);
};

/** `not seen`: lines of evidence that nobody looked at. Tests of years ago still carry the chance of wear. */
export const notSeenLines = (
  { notSeen, wear, opened }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const isFirst = ({ line }: { readonly line: string }): number =>
    Number(opened !== undefined && line === "measured");
  // open, what can be measured now settles most: it must not be the one that is cut off
  const unseen = notSeen
    .filter((one) => one.settles === undefined && !(isUnsettled(one) && room.measure !== "minutes"))
    .toSorted((a, b) => isFirst(b) - isFirst(a));
  if (unseen.length === 0) return [];
  const shown = unseen.slice(0, room.unseen);
  const more = unseen.length - shown.length;
  const rest = more > 0 ? [`and ${String(more)} more (--why)`] : [];
  const texts = shown.map(({ line, text, last }) => {
    if (last === undefined) return text;
    return line === "cranking" && wear.length > 0 ? `${text} of late` : `${text} since ${last}`;
  });
  return prose([...texts, ...rest].join("; "), width, leads.unseen);
};

/** Measured, and yet not to be told from. */
const isUnsettled = ({ line, why }: DecisionAssessment["notSeen"][number]): boolean =>
  line === "measured" && why !== undefined;

/** `unsettled  bearings: too close to tell: rod bearing 2 clearance 0.102 mm, limit 0.11 mm`. */
export const unsettledLines = (
  { notSeen }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  if (room.measure === "minutes") return [];
  const open = notSeen.filter(isUnsettled);
  return open.flatMap(({ text, why = "" }) =>
    prose(`${text.replace(/ measured$/, "")}: ${why}`, width, leads.open),
  );
};

/** `find out`: what a note leaves open, and what knowing it would settle. */
export const askLines = ({ notSeen }: DecisionAssessment, width: number, room: Room): readonly string[] =>
  notSeen.flatMap(({ text, settles }) => {
    if (settles === undefined) return [];
    return prose(room.measure === "full" ? `${text}: ${settles}` : `${text} (--why)`, width, leads.ask);
  });

/** What no reading can show: the other fault, ring tension, bearings. */
export const blindLines = (
  { cannotSee, otherFaults, history }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const seen = cannotSee.filter((one) => one !== "sudden faults");
  if (seen.length === 0) return [];
  const last = otherFaults.at(-1);
  const isTold = last !== undefined && room.blind === "full";
  const fault = isTold ? `the other fault (${last.text}, ${last.date})` : "the other fault";
  const isAlone = history.record.engine.cylinders.length === 1;
  const parts = seen.map((one) =>
    one === "the other fault"
      ? fault
      : isAlone && one === "wear of all cylinders alike"
        ? "wear of its one cylinder"
        : one,
  );
  return prose(`${joined(parts)}: in no reading here`, width, "blind to   ");
};
