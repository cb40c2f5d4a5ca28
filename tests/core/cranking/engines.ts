// Engines of different kinds for the cycle model, invented.

import {
  angle,
  area,
  crankingCycle,
  length,
  speed,
  temperature,
  volume,
  absolutePressure,
  type CycleInput,
} from "@sealtrend/core/parts";

/** 86 x 86 mm, ratio 10, intake closing 60 deg, 250 rpm, 1 mm2, wall 360 K, start 320 K, heat after Hohenberg. */
export const spark: CycleInput = {
  cylinder: { bore: length(0.086), stroke: length(0.086), rod: length(0.143), compressionRatio: 10 },
  intakeCloses: angle(60),
  speed: speed(250),
  air: absolutePressure(101_325),
  start: temperature(320),
  wall: temperature(360),
  leak: area(1e-6),
  heat: "hohenberg",
  heatFactor: 1,
  gamma: "variable",
  hose: volume(0),
};

/** 102 x 120 mm, ratio 17.3, intake closing 30 deg, 200 rpm, 0.5 mm2. */
export const diesel: CycleInput = {
  ...spark,
  cylinder: { bore: length(0.102), stroke: length(0.12), rod: length(0.192), compressionRatio: 17.3 },
  intakeCloses: angle(30),
  speed: speed(200),
  leak: area(0.5e-6),
};

/** 78 x 78.4 mm, ratio 22, intake closing 40 deg, 250 rpm, 0.5 mm2. */
export const smallDiesel: CycleInput = {
  ...spark,
  cylinder: { bore: length(0.078), stroke: length(0.0784), rod: length(0.13), compressionRatio: 22 },
  intakeCloses: angle(40),
  leak: area(0.5e-6),
};

/** 73 x 60 mm, ratio 10.5, intake closing 60 deg, 350 rpm, 0.6 mm2. */
export const motorcycle: CycleInput = {
  ...spark,
  cylinder: { bore: length(0.073), stroke: length(0.06), rod: length(0.105), compressionRatio: 10.5 },
  speed: speed(350),
  leak: area(0.6e-6),
};

/** No heat passes and the gas keeps one ratio of specific heats. */
export const plain = (input: CycleInput): CycleInput => ({ ...input, heat: "none", gamma: 1.4 });

/** The reading in kPa. */
export const reading_kPa = (input: CycleInput): number => crankingCycle(input).reading / 1000;
