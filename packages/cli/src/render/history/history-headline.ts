// The first sentences of `history`: what the years show, and no more than they show.

import type { CylinderHistory, HistoryAssessment, KindHistory } from "@sealtrend/core";
import { engineSentence, singleSentence } from "./history-engine.ts";
import {
  againstText,
  courseSentence,
  dropSentence,
  hasDropped,
  othersOf,
  pairSentence,
} from "./history-sentences.ts";
import { grownAcross } from "./history-testers.ts";
import { count, counted, cylinders as named, joined, percent, sentence } from "../words.ts";

/** Sentences, each a paragraph. */
export const historyHeadline = ({ record }: HistoryAssessment, kind: KindHistory): readonly string[] => {
  const { result } = kind;
  const full = result.tests.filter(({ use }) => use === "full").length;
  if (full === 0) return ["No test counts yet, so no course."];
  if (full === 1) return ["Only one test counts, so there is no course yet."];
  if (record.engine.cylinders.length === 1) return [singleSentence(kind)];
  const { word } = result.common;
  if (result.cylinders.some(isEither)) return [pairSentence(kind), engineSentence(kind)];
  const moved = result.cylinders.filter(hasMoved);
  const changes = moved
    .filter((cylinder) => !isMirror(cylinder, kind))
    .map((cylinder) => courseSentence(cylinder, kind));
  const dropped = result.cylinders.filter(hasDropped);
  const quiet = (course: CylinderHistory["course"]): readonly CylinderHistory[] =>
    result.cylinders.filter(
      (one) =>
        one.course === course &&
        !hasMoved(one) &&
        !isMirror(one, kind) &&
        !(course === "steady" && hasDropped(one)),
    );
  const [steady, open] = [quiet("steady"), quiet("too-short-to-tell")];
  const before = moved.length + dropped.filter(({ course }) => course === "steady").length;
  const engine =
    open.length === result.cylinders.length && word === "too-short-to-tell" ? [] : [engineSentence(kind)];
  const cylinders = [
    ...dropped.map((cylinder) => dropSentence(cylinder, kind)),
    ...steadyText(steady, before, kind),
    ...openText(open, before + steady.length, kind),
  ];
  const engineFirst = changes.length === 0 && dropped.length === 0 && word === "falling";
  const rest = engineFirst ? [...engine, ...cylinders] : [...cylinders, ...engine];
  return [...(changes.length > 0 ? [changes.join(" ")] : []), [...grownAcross(kind), ...rest].join(" ")];
};

/** Whether a cylinder's course is a finding: something moved, or its last reading held nothing. */
export const hasMoved = ({ course, alarms }: CylinderHistory): boolean =>
  alarms.includes("no-compression") || (course !== "steady" && course !== "too-short-to-tell");

/** `All four cylinders are`, `The other three are`, `Cylinders 1 and 2 are`. @param before - those named already */
const whoAre = (labels: readonly string[], before: number, { result }: KindHistory): string => {
  const all = result.cylinders.length;
  const are = labels.length === 1 ? "is" : "are";
  if (labels.length === all) return all === 2 ? "Both cylinders are" : `All ${count(all)} cylinders are`;
  if (labels.length === 1 || before + labels.length < all)
    return `${labels.length > 6 ? `${sentence(count(labels.length))} cylinders` : named(labels)} ${are}`;
  return `The other ${count(labels.length)} ${are}`;
};

/** Mean ratio to the others, ln units, from which a cylinder that stays low is named (about -10 %); judgement. */
const low = Math.log(0.9);

const steadyText = (
  steady: readonly CylinderHistory[],
  before: number,
  kind: KindHistory,
): readonly string[] => {
  if (steady.length === 0) return [];
  const lows = steady
    .filter(isLow)
    .map(({ label, meanRatio = 0 }) => `${label} has read ${percent(-Math.expm1(meanRatio))}`);
  const labels = steady.map(({ label }) => label);
  const { word } = kind.result.common;
  // against one another is all that contrasts can tell; where the engine as a whole moves it has to be said
  const isTold = word === "falling" || word === "rising" || kind.result.cylinders.length === 2;
  const among = !isTold
    ? ""
    : ` ${labels.length === 1 ? `against ${othersOf(kind)}` : againstText(kind).toLowerCase()}`;
  const text = `${whoAre(labels, before, kind)} steady${among}`;
  return [lows.length === 0 ? `${text}.` : `${text}, but ${joined(lows)} under ${othersOf(kind)} all along.`];
};

/** Whether a cylinder that stays where it is stands low. */
export const isLow = ({ meanRatio = 0 }: CylinderHistory): boolean => meanRatio < low;

const openText = (open: readonly CylinderHistory[], before: number, kind: KindHistory): readonly string[] => {
  const { result } = kind;
  if (open.length === 0) return [];
  if (open.length < result.cylinders.length) {
    const who = whoAre(
      open.map(({ label }) => label),
      before,
      kind,
    );
    return [`${who.replace(/ (is|are)$/, "")}: too short to tell.`];
  }
  const most = Math.max(...result.cylinders.map(({ count: tests }) => tests));
  const renewed = result.cylinders.every(({ since = 0 }) => since > 0);
  const changed = result.services.at(-1);
  const last =
    changed?.against !== "nothing"
      ? "since the last work"
      : changed.why.endsWith("another supply pressure")
        ? "since the supply pressure changed"
        : "since the tester changed";
  const when = renewed ? last : "so far";
  const work = result.services.findLast(({ steps }) => steps.some(({ after }) => after === 0));
  const none =
    work === undefined ? "no test that read two cylinders so far" : `no test since the ${work.why}`;
  const tests = most === 0 && !renewed ? none : `${counted(most, "test")} ${when}`;
  return [`Too short to tell${most < 4 ? `: ${tests}, and a course needs four` : ""}.`];
};

/** Two cylinders of which nobody can tell which one moved. */
export const isEither = (cylinder: CylinderHistory): boolean =>
  cylinder.mirrored === "either" && hasMoved(cylinder) && !cylinder.alarms.includes("no-compression");

/** Of two cylinders the one that only seems to rise, because the other falls, or fell in the last test. */
export const isMirror = (cylinder: CylinderHistory, { result }: KindHistory): boolean => {
  const { course, mirrored } = cylinder;
  const [other] = result.cylinders.filter((one) => one !== cylinder);
  if (mirrored === "no" || other === undefined) return false;
  if (!hasMoved(cylinder) && hasDropped(other) && !hasDropped(cylinder)) return true;
  const falls = other.course === "falling" || other.course === "stepped-down";
  return mirrored === "named" && (course === "rising" || course === "stepped-up") && falls;
};
