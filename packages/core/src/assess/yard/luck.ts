// How many sound engines would show a suspect cylinder by luck alone.

/** Share of single tests of sound engines in which a cylinder is flagged, by the cylinders compared. Computed by us: 40,000
 *  tests each (above 12 cylinders 15,000), drawn by the design of handbook/statistics.md I with the bad readings it has;
 *  L.8 there gives 3.4 % for 2 and 5.8 % for 8 cylinders (computed too). Checked again by tests/core/assess/yard-luck.test.ts. */
const flagged: readonly (readonly [cylinders: number, share: number])[] = [
  [2, 0.035],
  [3, 0.038],
  [4, 0.039],
  [5, 0.044],
  [6, 0.049],
  [8, 0.06],
  [10, 0.072],
  [12, 0.082],
  [16, 0.106],
  [28, 0.148],
];

/** The chance that a sound engine has a suspect cylinder in one test; 0 where there is nothing to compare, and straight between
 *  the numbers of cylinders that were drawn. Leak-downs are taken to be flagged as often (judgement).
 *  @param compared - cylinders that were read */
export const suspectByLuck = (compared: number): number => {
  if (compared < 2) return 0;
  const above = flagged.findIndex(([cylinders]) => cylinders >= compared);
  const [high, low] = [flagged[above] ?? flagged.at(-1), flagged[above - 1]];
  if (high === undefined) return 0;
  if (low === undefined || above === -1) return high[1];
  return low[1] + ((compared - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);
};
