// What stands beside the readings of one test: air that was heard, the level of the whole engine.

import { type CylinderAssessment, type HeardPlace, type TestAssessment, standApart } from "@sealtrend/core";
import { count, joined, percent, sentence } from "../words.ts";
import { isAirSaid } from "./show-causes.ts";

/** `Air heard: exhaust in 5; crankcase, faint, in 1 and 3; none in 2.`, and where a low cylinder's air goes. */
export const heardText = (assessment: TestAssessment): string => {
  const places = new Map<string, string[]>();
  for (const { label, heard = [] } of assessment.cylinders)
    for (const { place, faint, neighbour } of heard) {
      const where = `${place === "none" ? "nowhere" : place}${neighbour === undefined ? "" : ` ${neighbour}`}${faint ? ", faint," : ""}`;
      places.set(where, [...(places.get(where) ?? []), label]);
    }
  const isHeard = ([where]: readonly [string, readonly string[]]): boolean => where !== "nowhere";
  const sorted = [...places].toSorted((a, b) => Number(isHeard(b)) - Number(isHeard(a)));
  const parts = sorted.map(
    ([where, labels]) =>
      `${where} in ${where === "nowhere" && labels.length > 4 && places.size > 1 ? `the other ${count(labels.length)}` : joined(labels)}`,
  );
  if (parts.length === 0) return "";
  const points = assessment.trust.code === "void" ? [] : pointsOf(assessment);
  return [`Air heard: ${parts.join("; ")}.`, ...points].join(" ");
};

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

/** A faint hiss in the crankcase is that of sound rings. Without valves nothing points to one. What is said with the likely
 *  causes is not said twice. */
const pointsOf = (assessment: TestAssessment): string[] => {
  const {
    cylinders,
    record: { engine },
  } = assessment;
  const valves = new Set<HeardPlace>(
    engine.porting === "valves" ? [] : engine.porting === "ports" ? ["intake", "exhaust"] : ["intake"],
  );
  return cylinders
    .filter(({ standing, label }) => standing !== "even" && !isAirSaid(assessment, label))
    .flatMap(({ label, heard = [] }) =>
      heard.flatMap(({ place, faint, neighbour = "the neighbour" }) => {
        const source = sources[place];
        if (source === undefined || valves.has(place) || (faint && place === "crankcase")) return [];
        const where = place === "neighbour" ? `at ${neighbour}` : (names[place] ?? `at the ${place}`);
        if (place === "neighbour" && standApart(engine.banks, label, neighbour))
          return [
            `In ${label} the air was noted at ${neighbour}, which does not stand next to it: look again.`,
          ];
        return [`In ${label} the air ${where} points to ${source}.`];
      }),
    );
};

/** That the whole engine has gone down, which the comparison of its cylinders cannot show. */
export const levelText = ({ levelSince, cylinders, record }: TestAssessment): string => {
  if (levelSince === undefined) return "";
  const { labels, change, date, gauge, before, speeds } = levelSince;
  const slower =
    speeds === undefined
      ? ""
      : `, cranked at ${speeds.after.toFixed(0)} instead of ${speeds.before.toFixed(0)} rpm`;
  const by = gauge === before ? "same gauge" : `${gauge} beside ${before}, linked`;
  const which =
    cylinders.length === 1
      ? "It reads"
      : labels.length < cylinders.length
        ? `${sentence(joined(labels))} read`
        : labels.length === 2
          ? "Both read"
          : "All read";
  return `${which} ${percent(-change)} lower than in ${date.slice(0, 7)} (${by}${slower}): see sealtrend history ${record.engine.id}.`;
};

/** Of two cylinders each is held against the other, so that a loss of one looks like a gain of the other. */
export const pairText = ({ cylinders, record }: TestAssessment): string => {
  const [loser] = cylinders.filter(isShownLower);
  const other = cylinders.find((cylinder) => cylinder !== loser);
  if (loser?.sinceFirst === undefined || other === undefined || cylinders.length > 2) return "";
  const { date, change } = loser.sinceFirst;
  return `Of two cylinders each is held against the other: ${loser.label} has lost ${percent(-change)} against ${other.label} since ${date.slice(0, 7)}, or ${other.label} has gained, or it is scatter (sealtrend history ${record.engine.id}).`;
};

const isShownLower = ({ sinceFirst }: CylinderAssessment): boolean =>
  sinceFirst !== undefined && sinceFirst.change <= -0.005;
