// What stands beside the readings of one test: air that was heard, the level of the whole engine.

import {
  type CylinderAssessment,
  type Heard,
  type HeardPlace,
  type TestAssessment,
  byKey,
  standApart,
} from "@sealtrend/core/parts";
import { count, joined, percent, sentence } from "../words.ts";
import { isAirSaid, isReIndexNext } from "./show-causes.ts";

/** `Air heard: exhaust and crankcase in 5; crankcase, faint, in 1 and 3; nowhere in 2.`, and where a low cylinder's air
 *  goes. */
export const heardText = (assessment: TestAssessment): string => {
  const { cylinders, trust } = assessment;
  const listened = cylinders.filter(({ heard = [] }) => heard.length > 0);
  const groups = [...byKey(listened, ({ heard = [] }) => whereText(heard.map(placeText)))];
  const sorted = groups.toSorted(([a], [b]) => Number(a === "nowhere") - Number(b === "nowhere"));
  const parts = sorted.map(([where, own]) => {
    const isRest = where === "nowhere" && own.length > 4 && groups.length > 1;
    const labels = own.map(({ label }) => label);
    return `${where} in ${isRest ? `the other ${count(labels.length)}` : joined(labels)}`;
  });
  if (parts.length === 0) return "";
  const points = trust.code === "void" ? [] : pointsOf(assessment);
  return [`Air heard: ${parts.join("; ")}.`, ...points].join(" ");
};

const whereText = (places: readonly string[]): string =>
  places.some((place) => place.includes(",")) ? places.join("; ") : joined(places);

const placeText = ({ place, faint, neighbour }: Heard): string =>
  `${place === "none" ? "nowhere" : place}${neighbour === undefined ? "" : ` ${neighbour}`}${faint ? ", faint," : ""}`;

/** Where air that is heard comes from as a rule, never for certain. @source handbook/trade.md C2 */
const sources: Partial<Record<HeardPlace, string>> = {
  exhaust: "the exhaust valve",
  intake: "the intake valve",
  crankcase: "rings, piston or bore",
  coolant: "the head gasket or a crack",
  neighbour: "the gasket between them, or a manifold they share",
  plug: "the seal of plug or adapter",
  outside: "the seal of plug, adapter or injector",
};

const names: Partial<Record<HeardPlace, string>> = {
  crankcase: "in the crankcase",
  coolant: "in the coolant",
  outside: "outside",
};

/** A sentence a cylinder that is not even. What is said with the likely causes is not said twice. */
const pointsOf = (assessment: TestAssessment): string[] =>
  assessment.cylinders
    .filter(({ standing, label }) => standing !== "even" && !isAirSaid(assessment, label))
    .flatMap(({ label, heard = [] }) => {
      const points = heard
        .filter(({ place }) => place !== "neighbour" || !isReIndexNext(assessment))
        .flatMap((air) => pointOf(assessment, label, air) ?? []);
      const astray = heard.flatMap((air) => astrayOf(assessment, label, air) ?? []);
      return [...(points.length === 0 ? [] : [`In ${label} the air ${joined(points)}.`]), ...astray];
    });

/** `at the exhaust points to the exhaust valve`. A faint hiss in the crankcase is that of sound rings. Without valves
 *  nothing points to one. */
const pointOf = (
  { record: { engine } }: TestAssessment,
  label: string,
  { place, faint, neighbour = "the neighbour" }: Heard,
): string | undefined => {
  const source = sources[place];
  if (source === undefined || (faint && place === "crankcase")) return undefined;
  if (
    engine.porting !== "valves" &&
    (place === "intake" || (place === "exhaust" && engine.porting === "ports"))
  )
    return undefined;
  if (place !== "neighbour") return `${names[place] ?? `at the ${place}`} points to ${source}`;
  return standApart(engine.banks, label, neighbour) ? undefined : `at ${neighbour} points to ${source}`;
};

/** What cannot be so, and is to be listened for again. With its piston at the top the ports of a two-stroke are shut.
 *  @source handbook/trade.md C2 (neighbours); the ports follow from how such an engine is built */
const astrayOf = (
  { record: { engine } }: TestAssessment,
  label: string,
  { place, neighbour }: Heard,
): string | undefined => {
  if (place === "neighbour" && neighbour !== undefined && standApart(engine.banks, label, neighbour))
    return `In ${label} the air was noted at ${neighbour}, which does not stand next to it: look again.`;
  return engine.porting === "ports" && (place === "exhaust" || place === "intake")
    ? `At the top the ports are shut: in ${label} air at the ${place} came past the rings, or the piston stood lower.`
    : undefined;
};

/** That the whole engine has gone down, which the comparison of its cylinders cannot show. */
export const levelText = (assessment: TestAssessment): string => {
  const lower = lowerText(assessment);
  return lower === "" ? "" : `${lower}: sealtrend history ${assessment.record.engine.id}`;
};

/** `All read 17 % lower than in 2020-08 (same gauge)`; empty where they do not. */
export const lowerText = ({ levelSince, cylinders }: TestAssessment): string => {
  if (levelSince === undefined) return "";
  const { labels, change, date, gauge, before, speeds } = levelSince;
  const slower =
    speeds === undefined
      ? ""
      : `, cranked at ${speeds.after.toFixed(0)} instead of ${speeds.before.toFixed(0)} rpm`;
  const by =
    gauge === undefined || before === undefined
      ? "if it was the same gauge"
      : gauge === before
        ? "same gauge"
        : `${gauge} beside ${before}, linked`;
  const which =
    cylinders.length === 1
      ? "It reads"
      : labels.length < cylinders.length
        ? `${sentence(joined(labels))} read`
        : labels.length === 2
          ? "Both read"
          : "All read";
  return `${which} ${percent(-change)} lower than in ${date.slice(0, 7)} (${by}${slower})`;
};

/** Of two cylinders each is held against the other, so that a loss of one looks like a gain of the other. Where to look is said
 *  once, with the level of the whole engine where that is told. */
export const pairText = ({ cylinders, record, levelSince }: TestAssessment): string => {
  const [loser] = cylinders.filter(isShownLower);
  const other = cylinders.find((cylinder) => cylinder !== loser);
  if (loser?.sinceFirst === undefined || other === undefined || cylinders.length > 2) return "";
  const { date, change } = loser.sinceFirst;
  const where = levelSince === undefined ? `: sealtrend history ${record.engine.id}` : ".";
  return `Of two cylinders each is held against the other: ${loser.label} has lost ${percent(-change)} against ${other.label} since ${date.slice(0, 7)}, or ${other.label} has gained, or it is scatter${where}`;
};

const isShownLower = ({ sinceFirst }: CylinderAssessment): boolean =>
  sinceFirst !== undefined && sinceFirst.change <= -0.005;
