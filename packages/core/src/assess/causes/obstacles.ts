// What keeps a test from being proposed on this engine, and what its owner has to make one with.

import { knownChamber, oilAmount } from "../../cranking/index.ts";
import type { Evidence, Obstacle } from "../../diagnosis/index.ts";
import { toSi } from "../../quantity/index.ts";
import type { Engine, EngineRecord } from "../../record/index.ts";
import type { Assessed } from "./assessed.ts";

/** The least oil that spreads over a piston; judgement. */
const leastOil = toSi(2, "ml");

/** @param found - of the cylinders, what was measured and heard */
export const obstaclesOf = (
  { record: { engine }, test }: Assessed,
  found: Evidence["cylinders"],
): readonly Obstacle[] => {
  const { compressionRelease, porting, cooling, cylinders, leakDownTest } = engine;
  const hasRelease = compressionRelease === "automatic" || compressionRelease === "manual";
  const facts: readonly (readonly [Obstacle, boolean])[] = [
    ["diesel", engine.ignition === "compression" && !isOilAllowed(engine)],
    ["oil not allowed", !isOilAllowed(engine)],
    ["oil above half the chamber", isOilTooMuch(engine)],
    ["no valves", porting === "ports"],
    ["no release", !hasRelease || test.conditions.release === "defeated"],
    ["air-cooled", cooling === "air"],
    ["one cylinder", cylinders.length === 1],
    // nobody holds a gauge beside one that runs
    ["propeller turns", engine.use === "aircraft"],
    ["no leak-down yet", found.every(({ leak }) => leak === undefined)],
    [
      "no air at a neighbour",
      !found.some(({ heard = [] }) => heard.some(({ place }) => place === "neighbour")),
    ],
    ["crank cannot be held", leakDownTest?.allowed === false],
  ];
  return facts.flatMap(([obstacle, holds]) => (holds ? [obstacle] : []));
};

/** A diesel, or an engine of which that is not known, gets oil only where its maker allows it. @source handbook/trade.md A8 */
const isOilAllowed = ({ ignition, wetTest }: Engine): boolean =>
  ignition === "spark" ? wetTest?.allowed !== false : wetTest?.allowed === true;

const isOilTooMuch = ({ geometry }: Engine): boolean => {
  const chamber = knownChamber(geometry);
  return chamber !== undefined && oilAmount(leastOil / chamber) === "too-much";
};

/** A tester or a second gauge in gauges.csv, and what logbook.json names. */
export const toolsOf = ({ gauges, tools = [] }: EngineRecord): readonly string[] => {
  const count = (kind: "compression" | "leak-down"): number =>
    gauges.filter((gauge) => gauge.kind === kind).length;
  return [
    ...(count("compression") > 1 ? ["second gauge"] : []),
    ...(count("leak-down") > 0 ? ["leak-down tester"] : []),
    ...tools,
  ];
};
