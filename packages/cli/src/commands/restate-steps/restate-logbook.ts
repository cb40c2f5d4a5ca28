// What the logbook says of the testers of `restate` beyond bore and dials, and what became of it.

import { type GaugePressure, type LeakQuestion, type PressureUnit, fromSi } from "@sealtrend/core";
import { fixed, percent } from "../../render/words.ts";
import type { Testers } from "./restate-testers.ts";

interface AsRead {
  /** The pressure as it stood on the dial. */
  readonly read: GaugePressure | undefined;
  readonly unit: PressureUnit;
}

/** A sentence each. */
export const logbookSays = (
  { restrictor, knownHoles, other, typed }: LeakQuestion,
  { here, there }: Testers,
  { read, unit }: AsRead,
): readonly string[] => {
  const plain = (pressure: number): string =>
    `${String(Number(fromSi(pressure, unit).toPrecision(4)))} ${unit}`;
  const off = (pressure: number): string => `${plain(Math.abs(pressure))} ${pressure > 0 ? "high" : "low"}`;
  const { compared } = other ?? {};
  const isAtOtherSupply = other?.supply !== undefined && other.supply !== typed.supply;
  const isMoved = other !== undefined && other.restrictor === undefined && isAtOtherSupply;
  const [own, far] = [here?.readsHigh ?? 0, there?.readsHigh ?? 0];
  return [
    ...(own !== 0 && read !== undefined && typed.kind === "pressure"
      ? [
          `${here?.id ?? ""} reads ${off(own)}: ${plain(typed.cylinder)} counts for the ${plain(read)} read${isMoved ? ", and is not added to what it would read" : ""}`,
        ]
      : []),
    ...(far !== 0 && there?.id !== here?.id
      ? [`${there?.id ?? ""} reads ${off(far)}: not added to what it would read`]
      : []),
    ...(compared === undefined
      ? []
      : [
          `${here?.id ?? ""} and ${there?.id ?? ""} were compared: a leak by the first is ${fixed(compared.areaRatio, 3)} times that by the other, ± ${percent(compared.uncertainty, 1)}; their bores do not count`,
        ]),
    ...(restrictor.bore !== undefined && (here?.knownHoles?.length ?? 0) > 0 && knownHoles !== undefined
      ? [`the open holes read on ${here?.id ?? ""} do not count: its bore is known`]
      : []),
  ];
};
