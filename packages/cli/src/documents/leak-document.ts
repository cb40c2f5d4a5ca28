// The leak-down in the JSON of `show`: each cylinder, and the test as a whole. What the tester does not tell is absent.

import {
  type LeakAndCranking,
  type LeakPart,
  type LeakTest,
  type LeakValue,
  type MasterUse,
  fromSi,
} from "@sealtrend/core/parts";
import { kPa } from "../render/units.ts";

const mm = (metres: number | undefined): number | undefined =>
  metres === undefined ? undefined : fromSi(metres, "mm");
const mm2 = (squareMetres: number | undefined): number | undefined =>
  squareMetres === undefined ? undefined : fromSi(squareMetres, "mm2");

export const leakDocument = (leak: LeakValue | undefined) =>
  leak === undefined
    ? undefined
    : {
        regulated_kPa: leak.regulated === undefined ? undefined : kPa(leak.regulated),
        read_kPa: leak.value === undefined ? undefined : kPa(leak.value),
        takes_kPa: leak.readings?.map(kPa),
        lost: leak.lost,
        takesLost: leak.takesLost,
        repeats: leak.repeats,
        u_lost: leak.uLost,
        ...sizeDocument(leak.sizing),
        ...masterDocument(leak.master),
        atLimit: leak.atLimit,
        standing: leak.standing,
        t: leak.t,
      };

const states = {
  measured: "measured",
  tight: "tighter-than-dials-show",
  disagree: "gauges-disagree",
  "no-seal": "no-seal",
} as const;

const sizeDocument = ({ judgement, alphaSpan, byHoles }: LeakValue["sizing"]) => {
  const figures = judgement?.kind === "measured" ? judgement.figures : undefined;
  const { size } = figures ?? {};
  const limit = judgement?.kind === "tight" ? judgement.limit : undefined;
  const hole = byHoles?.kind === "measured" ? byHoles : undefined;
  return {
    state: judgement === undefined ? undefined : states[judgement.kind],
    alpha: figures?.alpha,
    u_alpha: figures?.uAlpha,
    alphaLow: alphaSpan?.low,
    alphaHigh: alphaSpan?.high,
    equalHole_mm: mm(hole?.hole ?? size?.equalHole),
    u_equalHole_mm: mm(hole?.uHole ?? size?.uEqualHole),
    equalHoleFrom: hole !== undefined ? "open-holes" : size !== undefined ? "restrictor" : undefined,
    area_mm2: mm2(size?.area),
    u_area_mm2: mm2(size?.uArea),
    cd: size?.cd,
    cdHalfWidth: size?.cdHalfWidth,
    flow_Lmin: size === undefined ? undefined : size.flow * 60_000,
    atMost:
      limit === undefined
        ? undefined
        : { alpha: limit.alpha, equalHole_mm: mm(limit.equalHole), area_mm2: mm2(limit.area) },
  };
};

const masterDocument = (use: MasterUse | undefined): Readonly<Record<string, number | true | undefined>> => {
  switch (use?.kind) {
    case undefined:
      return {};
    case "margin":
      return { masterMargin: use.margin, u_masterMargin: use.uMargin };
    case "at-most":
      return { masterMarginAtMost: use.margin };
    case "span":
      return { masterMargin: (use.low + use.high) / 2, masterMarginLow: use.low, masterMarginHigh: use.high };
    case "beyond":
      return { beyondMaster: true };
  }
};

export const leakTestDocument = (leak: LeakTest | undefined) => {
  if (leak === undefined) return undefined;
  const { instrument, masterLost, warmthFactor, parts, alone, cranking } = leak;
  const { restrictor, tester } = instrument ?? {};
  return {
    gauge: instrument?.gauge,
    dial: tester?.dial,
    restrictor_mm: mm(restrictor?.bore),
    profile: restrictor?.profile,
    station_kPaAbs: instrument === undefined ? undefined : kPa(instrument.ambient),
    masterLost,
    warmthFactor,
    parts: parts.length === 0 ? undefined : parts.map(partDocument),
    alone:
      alone.length === 0
        ? undefined
        : alone.map(({ what, lost }) => ({ what, lost: lost.map((part) => part ?? null) })),
    cranking: cranking === undefined ? undefined : crankingDocument(cranking),
  };
};

const partDocument = ({ uShare, isLessThanHalf, ...part }: LeakPart) => ({
  ...part,
  u_share: uShare,
  lessThanHalf: isLessThanHalf,
});

const crankingDocument = ({ speed, cylinders, ...rest }: LeakAndCranking) => ({
  ...rest,
  speed_rpm: speed,
  cylinders: cylinders.map(
    ({ label, kind, expected, uExpected, observed, uObserved, z, lost, lostFellows }) => ({
      label,
      kind,
      expected,
      u_expected: uExpected,
      observed,
      u_observed: uObserved,
      z,
      lostToLeak: lost,
      lostToLeakOthers: lostFellows,
    }),
  ),
});
