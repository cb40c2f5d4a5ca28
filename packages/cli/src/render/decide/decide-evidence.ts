// What counted for wear and against it, a part a line of evidence, each with where it came from; and what nobody looked at.

import type { DecisionAssessment, FoundRow } from "@sealtrend/core";
import { joined } from "../words.ts";
import { prose } from "../prose.ts";

/** How much room there is, from everything down to the least. */
export type Room = "all" | "roomy" | "tight" | "least";

/** Lines of evidence that are told, findings of one line, places they came from, and lines named as not seen. */
const most: Readonly<Record<Room, Readonly<Record<"groups" | "texts" | "places" | "unseen", number>>>> = {
  all: { groups: Infinity, texts: Infinity, places: Infinity, unseen: Infinity },
  roomy: { groups: 5, texts: 2, places: 2, unseen: 8 },
  tight: { groups: 3, texts: 1, places: 2, unseen: 5 },
  least: { groups: 1, texts: 1, places: 1, unseen: 2 },
};

/** `for wear` and `against`: rows that counted, the heaviest line first; `set aside`: those that a guard keeps out. */
export const evidenceLines = (
  { evidence }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const counted = evidence.filter(({ use }) => use === "counted");
  const pro = counted.filter(speaksForWear);
  const con = counted.filter((row) => !speaksForWear(row));
  const aside = groupsText(
    evidence.filter(({ use }) => use === "set-aside"),
    room,
  );
  return [
    ...prose(groupsText(pro, room) || nothing, width, leads.pro),
    ...prose(groupsText(con, room) || nothing, width, leads.con),
    ...(aside === "" ? [] : prose(aside, width, leads.aside)),
  ];
};

const nothing = "nothing that counts";

const leads = {
  pro: "for wear   ",
  con: "against    ",
  aside: "set aside  ",
  unseen: "not seen   ",
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
  const shown = groups.slice(0, most[room].groups);
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
  const from = [...new Set(rows.map(({ from: place }) => place))];
  const shown = texts.slice(0, most[room].texts);
  const more = texts.length > shown.length ? `, and ${String(texts.length - shown.length)} more` : "";
  return `${shown.join(", ")}${more} (${from.slice(0, most[room].places).join(", ")})`;
};

/** `not seen`: lines of evidence that nobody looked at. */
export const notSeenLines = (
  { notSeen }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  if (notSeen.length === 0) return [];
  const shown = notSeen.slice(0, most[room].unseen);
  const more = notSeen.length - shown.length;
  const rest = more > 0 ? `; and ${String(more)} more (--why)` : "";
  return prose(`${shown.map(({ text }) => text).join("; ")}${rest}`, width, leads.unseen);
};

/** What no reading can show: the other fault, ring tension, bearings. */
export const blindLines = (
  { cannotSee, otherFaults }: DecisionAssessment,
  width: number,
  room: Room,
): readonly string[] => {
  const seen = cannotSee.filter((one) => one !== "sudden faults");
  if (seen.length === 0) return [];
  const last = otherFaults.at(-1);
  const fault = last === undefined ? "the other fault" : `the other fault (${last.text}, ${last.date})`;
  const parts = seen
    .map((one) => (one === "the other fault" ? fault : one))
    .slice(0, room === "least" ? 3 : undefined);
  return prose(`${joined(parts)}: in no reading here`, width, "blind to   ");
};
