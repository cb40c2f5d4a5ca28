// What to measure next by what the diagnosis expects it to tell, on the cylinders it is about.

import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment, NextTest, TestAssessment } from "./assessment.ts";
import { isLow } from "./causes/assessed.ts";
import { diagnosedTests } from "./causes/diagnosed-tests.ts";
import type { TestFacts } from "./causes/test-texts.ts";
import { isWorthExplaining } from "./causes/worth-explaining.ts";
import { firstSteps } from "./first-steps.ts";
import { labelsOf } from "./labels.ts";
import { isLowAlike } from "./prove-first.ts";
import { isWarm } from "./trust/cold.ts";

type Asked = Omit<NextTest, "by">;
type Found = Pick<
  TestAssessment,
  | "trust"
  | "cylinders"
  | "oil"
  | "high"
  | "diagnosis"
  | "evidence"
  | "levelSince"
  | "levelBelow"
  | "unexplained"
>;

/** What would tell the causes apart. Nothing where all is even and nothing of the whole engine is likely. */
export const forCauses = (
  record: EngineRecord,
  test: Test,
  found: Found & { readonly plain: readonly Asked[] },
): readonly Asked[] => {
  const { diagnosis, plain, high } = found;
  const low = found.cylinders.filter(isLow);
  if (diagnosis === undefined || !isWorthExplaining(found)) return [];
  // whether one reads high or all the others have lost must be known first
  if (high !== undefined && low.length === 0) return [];
  const facts = factsOf(record, { ...found, low });
  const isOilUseless = high !== undefined || (low.length > 0 && facts.leaking === "");
  const target = found.cylinders[diagnosis.target];
  const dry = target?.pressures;
  const answered = firstSteps(record, test, found).pointless;
  if (answered === "all") return [];
  const pointless = [
    ...plain.map(({ code }) => code),
    ...answered,
    ...(isWarm(test) ? ["retest-warm"] : []),
    ...(isOilUseless ? ["wet"] : []),
    // what holds nothing has no first stroke either
    ...(dry?.dry?.value === 0 ? ["first-stroke"] : []),
    // whether it is the gasket comes before what can be seen of the valves
    ...(plain.some(({ code }) => code === "re-index-the-neighbour") ? ["borescope", "wet"] : []),
    // what oil lies in gives no dry reading
    ...(dry?.wet === undefined ? [] : ["repeat", "first-stroke", "second-gauge"]),
    // more of the same would tell no more
    ...(target?.confirmed === true ? ["repeat"] : []),
    // all are read again once the day was put right
    ...(plain.some(({ code }) => code === "conditions") && isLowAlike(found) ? ["repeat"] : []),
  ];
  const asked = diagnosedTests(diagnosis, facts, pointless);
  // what only a cranking gauge says is looked at by another instrument before it is acted on
  const isGaugeAlone = diagnosis.capped && diagnosis.enough && plain.length + asked.length === 0;
  return isGaugeAlone ? diagnosedTests(diagnosis, facts, pointless, "any").slice(0, 1) : asked;
};

const factsOf = (
  { engine }: EngineRecord,
  { low, cylinders, high, diagnosis, oil }: Found & { readonly low: readonly CylinderAssessment[] },
): TestFacts => {
  const flagged = low.filter(({ flagged: out, leakDown }) => out || isLow(leakDown ?? {}));
  const standOut = flagged.length > 0 ? flagged : low;
  const read = cylinders.filter(({ standing }) => standing !== undefined);
  const isEvery = standOut.length === 0 || standOut.length === read.length;
  const sound = cylinders.find(({ standing }) => standing === "even");
  const control = sound ?? (flagged.length > 0 ? low.find((one) => !flagged.includes(one)) : undefined);
  const target = cylinders[diagnosis?.target ?? 0]?.label ?? "";
  return {
    engine,
    labels: !isEvery ? labelsOf(standOut) : cylinders.length === 1 ? target : "every cylinder",
    leaking: labelsOf(standOut.filter(({ lowWithoutLeak }) => lowWithoutLeak !== true)),
    control: isEvery ? undefined : control?.label,
    ...(oil?.byTwo === undefined ? {} : { oiledByTwo: true }),
    reach: high !== undefined || (isEvery && cylinders.length > 1) ? "every" : "low",
    neighbour: undefined,
  };
};
