// The JSON of `expect`: sealtrend/expect@1. Units are fixed: kPa gauge, mm, cm3, mm2, deg, degC, rpm.

import { type ExpectedInput, type InputName, type UnitName, fromSi } from "@sealtrend/core";
import type { Known } from "../commands/expect-steps/expect-known.ts";
import { type Expected, expectCautions, unlikelyCautions } from "../render/expect/expect-cautions.ts";
import { inThisAir, lessOver } from "../render/expect/expect-place.ts";
import { differenceIn } from "../render/expect/expect-units.ts";
import { kPa } from "../render/units.ts";

const units: Readonly<Record<InputName, UnitName | undefined>> = {
  compressionRatio: undefined,
  size: "cm3",
  shape: undefined,
  bore: "mm",
  stroke: "mm",
  rod: "mm",
  intakeCloses: "deg",
  leak: "mm2",
  wall: "C",
  start: "C",
  airTemperature: "C",
  heatFactor: undefined,
  hose: "cm3",
  speed: "rpm",
};
const suffixes: Partial<Record<UnitName, string>> = { C: "degC" };

/** What is undefined is left out when the document is written. */
export const expectDocument = ({ answer, known, record }: Expected) => ({
  schema: "sealtrend/expect@1",
  engine: record === undefined ? undefined : { id: record.engine.id, name: record.engine.name },
  kind: known.kind,
  kindFrom: known.kindFrom ?? "assumed",
  trappedRatio: answer.trappedRatio,
  trappedRatioWithHose: answer.trappedRatioWithHose,
  clearance_cm3: fromSi(answer.clearance, "cm3"),
  swept_cm3: fromSi(answer.swept, "cm3"),
  expected_kPa: kPa(answer.expected),
  low_kPa: kPa(answer.low),
  high_kPa: kPa(answer.high),
  u_lnExpected: answer.uncertainty,
  standing: answer.standing,
  model: {
    peak_kPaAbs: kPa(answer.cycle.peak),
    peakAngle_deg: answer.cycle.peakAngle,
    massLeft: answer.cycle.massLeft,
    exponent: answer.cycle.exponent,
    peak_degC: fromSi(answer.cycle.peakTemperature, "C"),
    heat: answer.model.heat,
    gamma: answer.model.gamma,
    u_lnModel: answer.modelUncertainty,
  },
  air: {
    station_kPaAbs: kPa(known.air.station),
    from: known.air.from,
    altitude_m: known.altitude,
    lessPer100m: known.air.from === "assumed" ? lessOver(100) : undefined,
  },
  inputs: answer.inputs.map((input) => inputDocument(input, known)),
  cautions: [...unlikelyCautions(known), ...expectCautions({ answer, known, record })],
  makersNew_kPa: made(record?.engine.compressionLimits.new, kPa),
  makersNewHere_kPa: made(record?.engine.compressionLimits.new, (figure) =>
    kPa(inThisAir(figure, known.air)),
  ),
  makersSpeed_rpm: record?.engine.compressionLimits.speed,
});

const inputDocument = ({ name, value, deviation, effect }: ExpectedInput, { sources }: Known) => {
  const unit = units[name];
  const key = unit === undefined ? "value" : `value_${suffixes[unit] ?? unit}`;
  const size = (si: number): number => (unit === undefined ? si : fromSi(si, unit));
  const source = name in sources ? sources[name as keyof Known["sources"]] : undefined;
  return {
    name,
    from: source ?? "assumed",
    [key]: size(value),
    ...(deviation?.by === "plus-minus" ? { [`u_${key}`]: differenceIn(unit, deviation.amount) } : {}),
    ...(deviation?.by === "times" ? { factor: deviation.amount } : {}),
    lnEffect: effect,
  };
};

const made = <T, R>(value: T | undefined, make: (value: T) => R): R | undefined =>
  value === undefined ? undefined : make(value);
