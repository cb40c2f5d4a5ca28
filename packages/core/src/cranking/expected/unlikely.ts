// What can be and yet is no engine that people crank by a gauge: most often a slip of the unit. Asked about, not refused.

import { sweptVolume } from "../cycle/cylinder.ts";
import type { EngineKind } from "./expected-assumptions.ts";
import type { KnownOfCylinder } from "./model-input.ts";

/** `shape` is bore/stroke, `rodToStroke` rod/stroke, `size` the volume swept. */
export interface Unlikely {
  readonly name: "compressionRatio" | "shape" | "rodToStroke" | "size" | "intakeCloses" | "speed";
  /** SI; degrees, rpm or a plain ratio, as the name has. */
  readonly found: number;
  /** What nearly all engines have. */
  readonly least: number;
  readonly most: number;
}

type Range = readonly [least: number, most: number];

/** @source judgement: from long-stroke engines of the 1910s to racing motorcycles, from trimmers to large tractors */
const usual = {
  shape: [0.4, 2],
  rodToStroke: [1.2, 3],
  size: [15e-6, 10e-3],
  intakeCloses: [-10, 115],
  speed: [50, 800],
} as const satisfies Readonly<Record<Exclude<Unlikely["name"], "compressionRatio">, Range>>;
const usualRatio: Readonly<Record<EngineKind, Range>> = {
  spark: [3, 16],
  motorcycle: [4, 16],
  compression: [11, 26],
};

/** What is unlikely about what was stated; nothing is held against an assumption. */
export const unlikelyOf = (known: KnownOfCylinder): readonly Unlikely[] => {
  const { kind, compressionRatio, bore, stroke, rod, intakeCloses, speed } = known;
  const sized = bore !== undefined && stroke !== undefined;
  const stated: readonly (readonly [Unlikely["name"], number | undefined, Range])[] = [
    ["compressionRatio", compressionRatio, usualRatio[kind]],
    ["shape", sized ? bore / stroke : undefined, usual.shape],
    ["size", sized ? sweptVolume({ bore, stroke }) : undefined, usual.size],
    ["rodToStroke", rod !== undefined && stroke !== undefined ? rod / stroke : undefined, usual.rodToStroke],
    ["intakeCloses", intakeCloses, usual.intakeCloses],
    ["speed", speed, usual.speed],
  ];
  return stated.flatMap(([name, found, [least, most]]) =>
    found === undefined || (found >= least && found <= most) ? [] : [{ name, found, least, most }],
  );
};
