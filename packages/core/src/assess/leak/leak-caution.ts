// What can hurt in a leak-down that is to be made next, and what the air of one on an aircraft means.

import type { EngineRecord, Test } from "../../record/index.ts";
import type { NextTest } from "../assessment.ts";

/** Tests that blow air into a cylinder. */
const byAir: ReadonlySet<string> = new Set([
  "leak-down-and-listen",
  "leak-down-lower-down",
  "re-seat-and-repeat",
  "re-index-the-neighbour",
]);

/** @source AC 43.13-1B par. 8-14; Lycoming SI 1191A; Continental (propeller); trade sources (crank tools)
 *  valves: CASA AD/ENG/4, Continental M84-15 (static seal: no leak) */
export const leakCautions = (
  { engine }: EngineRecord,
  test: Test,
  next: readonly NextTest[],
): readonly string[] => {
  const kinds = new Set<string>(test.rows.map(({ what }) => what));
  const isRepeat = [...kinds].every((what) => what.startsWith("leak-down"));
  const code = next[0]?.code;
  const isAircraft = engine.use === "aircraft";
  // a propeller kills, so air that is proposed anywhere is enough there
  const isNext =
    byAir.has(code ?? "") ||
    (code === "repeat" && isRepeat) ||
    (isAircraft && next.some((one) => byAir.has(one.code)));
  const isRead = [...kinds].some((what) => what.startsWith("leak-down"));
  const { leakDownTest } = engine;
  const swing = isAircraft
    ? "air swings the propeller: a second person holds it before any air goes on, low pressure first; keep out of its arc"
    : "air turns the crank if the piston is off the top: bars and sockets off, hands clear, low pressure first";
  const leaks = isAircraft ? staticLeaks(engine.cylinders, test) : [];
  return [
    ...(isRead && leakDownTest?.allowed === false
      ? [
          `leak-down: this engine is to get no air under pressure (${leakDownTest.source ?? "engine.json"}): do not repeat it`,
        ]
      : []),
    ...(isNext ? [swing] : []),
    ...(leaks.length === 0
      ? []
      : [
          `air past valves, plug or barrel joint was heard in ${leaks.join(", ")}: some makers and authorities allow none, whatever the reading; ask the licensed person`,
        ]),
  ];
};

/** Cylinders whose air was heard anywhere but in the crankcase. */
const staticLeaks = (labels: readonly string[], { heard = [] }: Test): readonly string[] =>
  labels.filter((_, i) =>
    (heard[i] ?? []).some(({ place }) => place !== "none" && place !== "crankcase" && place !== "neighbour"),
  );
