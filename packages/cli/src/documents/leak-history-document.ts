// The leak-down in the JSON of `history`: each leak as a hole where its tester tells one, and where the tester changed.

import { type KindHistory, fromSi } from "@sealtrend/core";

const mm = (metres: number): number => fromSi(metres, "mm");

/** Of one cylinder, in the order of the tests; null where the tester tells no size. Empty for cranking. */
export const holesDocument = ({ result, counted, holes }: KindHistory, label: string) => {
  const cylinder = result.cylinders.findIndex((one) => one.label === label);
  const own = result.tests.map(({ ids }) => {
    const place = counted.findIndex(({ test }) => test.id === ids[0]);
    return holes[place]?.[cylinder];
  });
  return own.every((hole) => hole === undefined)
    ? {}
    : {
        equalHole_mm: own.map((hole) => (hole === undefined ? null : mm(hole.hole))),
        u_equalHole_mm: own.map((hole) => (hole === undefined ? null : mm(hole.uHole))),
      };
};

export const testerChangesDocument = ({ testerChanges }: KindHistory) =>
  testerChanges.length === 0
    ? undefined
    : testerChanges.map(({ holes, ...change }) => ({
        ...change,
        cylinders: holes.map(({ label, before, after, lnRatio, uLnRatio, uLnRatioBetweenDays, shown }) => ({
          label,
          before_mm: mm(before.hole),
          u_before_mm: mm(before.uHole),
          after_mm: mm(after.hole),
          u_after_mm: mm(after.uHole),
          lnRatio,
          u_lnRatio: uLnRatio,
          u_lnRatioBetweenDays: uLnRatioBetweenDays,
          shown: shown === "yes",
        })),
      }));
