// From the record of an engine and one of its tests, assessed, to what the diagnosis goes by.

import type { CylinderEvidence, Evidence } from "../../diagnosis/index.ts";
import { mean } from "../../statistics/index.ts";
import type { EngineFigures } from "../figures.ts";
import type { Assessed } from "./assessed.ts";
import type { HistoryAssessment } from "../years/assess-history.ts";
import { circumstancesOf } from "./circumstances.ts";
import { crankingEvidence } from "./cranking-evidence.ts";
import { expectedLevel } from "./expected-level.ts";
import { heardEvidence } from "./heard-evidence.ts";
import { leakEvidence } from "./leak-evidence.ts";
import { obstaclesOf, toolsOf } from "./obstacles.ts";
import { onsetsOf } from "./onsets.ts";
import { seenOf } from "./seen-of.ts";
import { gasOf, signsOf } from "./signs-of.ts";

/** @param figures - of the record  @param history - of the record, where it is known already */
export const evidenceOf = (
  assessed: Assessed,
  figures: EngineFigures,
  history?: HistoryAssessment,
): Evidence => {
  const { record } = assessed;
  const { banks, cylinders: labels, sharedGasket } = record.engine;
  const leaks = leakEvidence(assessed);
  const cylinders = cylindersOf(assessed, leaks.cylinders, onsetsOf(assessed, figures, history));
  const expected = expectedLevel(assessed, figures);
  const oilRise = oilRiseOf(assessed, cylinders);
  const gas = gasOf(assessed);
  return {
    cylinders,
    banks: (banks.length > 0 ? banks : pairHeard(assessed)).map((bank) =>
      bank.map((label) => labels.indexOf(label)),
    ),
    sharedGasket,
    circumstances: circumstancesOf(assessed, figures, expected),
    ...(expected === undefined ? {} : { expected }),
    ...(oilRise === undefined ? {} : { oilRise }),
    restrictor: leaks.restrictor,
    signs: signsOf(assessed),
    ...(gas === undefined ? {} : { gas }),
    tools: toolsOf(record),
    obstacles: obstaclesOf(assessed, cylinders),
  };
};

/** Where nobody wrote down how the cylinders stand, two of which one was named as the other's neighbour stand side by side. */
const pairHeard = ({ record, test }: Assessed): readonly (readonly string[])[] =>
  record.engine.cylinders
    .flatMap((label, i) =>
      (test.heard?.[i] ?? []).flatMap(({ neighbour }) =>
        neighbour === undefined ? [] : [[label, neighbour]],
      ),
    )
    .slice(0, 1);

const cylindersOf = (
  assessed: Assessed,
  leaks: readonly Pick<CylinderEvidence, "leak" | "oiled" | "lower">[],
  onsets: readonly CylinderEvidence["onset"][],
): readonly CylinderEvidence[] => {
  const cranking = crankingEvidence(assessed);
  const heard = heardEvidence(assessed);
  const seen = seenOf(assessed);
  return assessed.cylinders.map((_, i): CylinderEvidence => {
    const [air, onset, looked = {}] = [heard[i], onsets[i], seen[i]];
    return {
      ...cranking[i],
      ...leaks[i],
      ...(air === undefined ? {} : { heard: air }),
      ...(onset === undefined ? {} : { onset }),
      ...(Object.keys(looked).length === 0 ? {} : { seen: looked }),
    };
  });
};

/** What the oil of each cylinder that counts does by its room, their mean; and no more than a sound cylinder rose with it, by
 *  one standard uncertainty (judgement). Undefined where neither tells. */
const oilRiseOf = ({ oil, cylinders }: Assessed, found: readonly CylinderEvidence[]): number | undefined => {
  if (oil === undefined) return undefined;
  const counted = cylinders.flatMap(({ label }, i) => (found[i]?.wet === undefined ? [] : [label]));
  const rises = oil.cylinders.flatMap(({ label, alone }) =>
    counted.includes(label) && alone !== undefined ? [alone] : [],
  );
  const byRoom = rises.length === 0 || rises.length < counted.length ? [] : [mean(rises)];
  const { controls, controlRise, controlUncertainty = 0 } = oil;
  const byControl =
    controlRise === undefined || !controls.every((label) => counted.includes(label))
      ? []
      : [Math.max(0, controlRise) + controlUncertainty];
  const known = [...byRoom, ...byControl];
  return known.length === 0 ? undefined : Math.min(...known);
};
