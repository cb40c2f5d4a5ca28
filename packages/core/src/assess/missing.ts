// What is not known of a test and its engine, each with what it would settle.

import type { TrustView } from "./trust-rules.ts";

/** The most telling first. */
export const missingOf = ({
  record: { engine },
  test,
  dry,
}: Pick<TrustView, "record" | "test" | "dry">): string[] => {
  const { conditions, perCylinder } = test;
  const { minimum, new: asNew } = engine.compressionLimits;
  const cranked = dry !== undefined;
  const release = engine.compressionRelease === "automatic" || engine.compressionRelease === "manual";
  const speedKnown = conditions.crankSpeed !== undefined || perCylinder.speed !== undefined;
  const airKnown = conditions.altitude !== undefined || conditions.stationPressure !== undefined;
  const warmthKnown = conditions.engineTemp !== undefined || conditions.engineTemperature !== undefined;
  const strokesKnown = conditions.strokes !== undefined || perCylinder.strokes !== undefined;
  const lists: readonly (readonly [boolean, string])[] = [
    [
      cranked && !speedKnown,
      conditions.crankVolts === undefined
        ? "cranking speed (a tired battery lowers all, a leaking cylinder most)"
        : "cranking speed (the volts alone do not tell it)",
    ],
    [cranked && !airKnown, "altitude or barometer (thin air lowers all readings alike, 3.5 % each 1000 ft)"],
    [!warmthKnown, "engine temperature (cold reads some 10 % lower)"],
    [
      cranked && engine.ignition === "spark" && conditions.throttle === undefined,
      "throttle (closed, it lowers all)",
    ],
    [
      cranked && conditions.plugsOut === undefined && engine.cylinders.length > 1,
      "plugs out, all or one (it changes the cranking speed)",
    ],
    [cranked && !strokesKnown, "strokes (too few stop short of the final reading)"],
    [cranked && release && conditions.release === undefined, "compression release, active or defeated"],
    [cranked && dry.gauge === undefined, gaugeText(engine.cylinders.length)],
    [
      cranked && minimum === undefined && asNew === undefined,
      "the maker's minimum (cylinders that are worn alike look even without it)",
    ],
  ];
  return lists.filter(([lacks]) => lacks).map(([, text]) => text);
};

const gaugeText = (cylinders: number): string =>
  `gauge (another one may read 3 % off${cylinders > 1 ? "; the cylinders of one test still compare" : ""})`;
