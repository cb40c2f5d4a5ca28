// How many sound engines would show a low cylinder by luck alone.

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

/** What the forward test is made for. Reached once the scatter is the engine's own: 8 tests of 3 readings each, drawn by that
 *  design, gave 5.0 % for 4 cylinders (4,000 engines) and 4.8 % for 8 (3,000); computed by us. */
const nominal = 0.05;

/** The chance that a sound engine has a low cylinder in one test: suspect, or lagging where repeats or the test before agree by
 *  luck. 0 where there is nothing to compare, and straight between the numbers of cylinders that were drawn. Leak-downs are
 *  taken to be flagged as often (judgement).
 *  @param compared - cylinders that were read  @param scatter - of its readings: believed beforehand, or from its own repeats */
export const lowByLuck = (compared: number, scatter: "believed" | "own"): number => {
  if (compared < 2) return 0;
  return scatter === "own" ? Math.max(nominal, drawn(compared)) : drawn(compared);
};

const drawn = (compared: number): number => {
  const above = flagged.findIndex(([cylinders]) => cylinders >= compared);
  const [high, low] = [flagged[above] ?? flagged.at(-1), flagged[above - 1]];
  if (high === undefined) return 0;
  if (low === undefined || above === -1) return high[1];
  return low[1] + ((compared - low[0]) / (high[0] - low[0])) * (high[1] - low[1]);
};
