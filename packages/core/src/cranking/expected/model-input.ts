// From what is known of a cylinder to everything the model needs: what is left out is assumed, and can be moved by a number
// of standard deviations.

import {
  type AbsolutePressure,
  type Angle,
  type Area,
  type Length,
  type Speed,
  type Temperature,
  type Volume,
  angle,
  area,
  length,
  speed,
  temperature,
  volume,
} from "../../quantity/index.ts";
import type { CycleInput } from "../cycle/cycle-rates.ts";
import { type Cylinder, sizeRange } from "../cycle/cylinder.ts";
import {
  type EngineKind,
  assumptions,
  boreAndStroke,
  givenDeviation,
  healthyLeak,
  healthyLeakOf,
  warmth,
} from "./expected-assumptions.ts";
import type { WallHeat } from "../cycle/wall-heat.ts";

/** What somebody stated; what is absent is assumed. */
export interface KnownOfCylinder {
  readonly kind: EngineKind;
  readonly compressionRatio: number;
  readonly bore?: Length;
  readonly stroke?: Length;
  readonly rod?: Length;
  /** Of the crank after bottom dead centre, at the seat. */
  readonly intakeCloses?: Angle;
  readonly speed?: Speed;
  /** Effective, Cd·A. */
  readonly leak?: Area;
  readonly engine?: "warm" | "cold";
  readonly wall?: Temperature;
  /** Of the gas when the intake closes. */
  readonly start?: Temperature;
  /** Where the air is drawn. */
  readonly airPressure: AbsolutePressure;
  readonly airTemperature?: Temperature;
  readonly heat?: WallHeat;
  readonly gamma?: "variable" | number;
  /** Ahead of the check valve. */
  readonly hose?: Volume;
}

/** Its name; `size` is the volume swept, `shape` bore/stroke, where bore or stroke is not given. */
export type InputName =
  | "compressionRatio"
  | "size"
  | "shape"
  | "bore"
  | "stroke"
  | "rod"
  | "intakeCloses"
  | "leak"
  | "wall"
  | "start"
  | "airTemperature"
  | "heatFactor"
  | "hose"
  | "speed";

/** How many standard deviations each is moved by; absent = none. */
export type Moved = Readonly<Partial<Record<InputName, number>>>;

/** Air where nobody read a thermometer [K]. */
export const usualAir = 293.15;
/** One standard deviation of a compression ratio, as measured heads and gaskets differ. */
export const deviationOfRatio = (ratio: number): number =>
  Math.min(givenDeviation.compressionRatio, (ratio - 1) / 2);
const least = (value: number, limit: number): number => Math.max(value, limit);
const most = (value: number, limit: number): number => Math.min(value, limit);

/** What is assumed of one size stays among those that can be, however odd the other. */
const within = ([smallest, largest]: readonly [number, number], metres: number): Length =>
  length(most(least(metres, smallest), largest));

const boreAndStrokeOf = (known: KnownOfCylinder, moved: Moved): Pick<Cylinder, "bore" | "stroke"> => {
  const { size, shape } = assumptions[known.kind];
  const k = shape[0] + (moved.shape ?? 0) * shape[1];
  const { bore, stroke } = known;
  if (bore !== undefined) return { bore, stroke: stroke ?? within(sizeRange.stroke, bore / k) };
  if (stroke !== undefined) return { bore: within(sizeRange.bore, stroke * k), stroke };
  return boreAndStroke(size[0] * size[1] ** (moved.size ?? 0), k);
};

/** The sizes alone, with some moved by standard deviations. */
export const cylinderOf = (known: KnownOfCylinder, moved: Moved = {}): Cylinder => {
  const { bore, stroke } = boreAndStrokeOf(known, moved);
  const { rod } = assumptions[known.kind];
  const ratio = known.compressionRatio;
  return {
    bore,
    stroke,
    rod: known.rod ?? length(stroke * (rod[0] + (moved.rod ?? 0) * rod[1])),
    compressionRatio: most(ratio + (moved.compressionRatio ?? 0) * deviationOfRatio(ratio), 40),
  };
};

const intakeClosesOf = (known: KnownOfCylinder, moved = 0): Angle => {
  const [usual, deviation] = assumptions[known.kind].intakeCloses;
  const given = known.intakeCloses;
  const closes =
    given === undefined ? usual + moved * deviation : given + moved * givenDeviation.intakeCloses;
  return angle(most(least(closes, -90), 179.9));
};

const hoseOf = (known: KnownOfCylinder, moved = 0): Volume => {
  const [usual, deviation] = assumptions[known.kind].hose;
  const { hose } = known;
  const ahead = hose === undefined ? usual + moved * deviation : hose + moved * givenDeviation.hose;
  return volume(least(ahead, 0));
};

const speedOf = (known: KnownOfCylinder, moved = 0): Speed => {
  const [usual, deviation] = assumptions[known.kind].speed;
  return speed(
    known.speed === undefined ? usual + moved * deviation : known.speed * (1 + moved * givenDeviation.speed),
  );
};

const wallOf = (known: KnownOfCylinder, airTemperature: number, moved = 0): number => {
  if (known.wall !== undefined) return known.wall;
  return known.engine === "cold" ? airTemperature : warmth.wall[0] + moved * warmth.wall[1];
};

/** Everything the model needs, with some inputs moved by standard deviations. */
export const modelInput = (known: KnownOfCylinder, moved: Moved = {}): CycleInput => {
  const cylinder = cylinderOf(known, moved);
  const airTemperature = known.airTemperature ?? usualAir;
  const wall = wallOf(known, airTemperature, moved.wall);
  const share = warmth.share[0] + (moved.start ?? 0) * warmth.share[1];
  return {
    cylinder,
    intakeCloses: intakeClosesOf(known, moved.intakeCloses),
    speed: speedOf(known, moved.speed),
    air: known.airPressure,
    start: known.start ?? temperature(airTemperature + share * (wall - airTemperature)),
    wall: temperature(wall),
    leak: known.leak ?? area(healthyLeakOf(cylinder) * healthyLeak.factor ** (moved.leak ?? 0)),
    heat: known.heat ?? "hohenberg",
    heatFactor: warmth.heatFactor ** (moved.heatFactor ?? 0),
    gamma: known.gamma ?? "variable",
    hose: hoseOf(known, moved.hose),
  };
};
