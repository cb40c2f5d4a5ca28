// One typed reading on a tester whose restrictor nobody knows, but which was read with open holes of known size.

import { length } from "../quantity/index.ts";
import { type LeakReading, lostUncertainty } from "./alpha.ts";
import type { Restated } from "./carry-leak.ts";
import { isentropicFlow } from "./flow-model.ts";
import { holeByHoles } from "./hole-by-holes.ts";
import { type LeakJudgement, judgeLeak } from "./judge.ts";
import type { HoleOfReading } from "./known-holes.ts";
import type { HolesRefusal, KnownHoles, LeakAnswer, LeakQuestion } from "./leak-question.ts";
import { readingAt } from "./reading.ts";
import { type RestateRefusal, isUnchanged, restateHole } from "./restate.ts";
import { type Warmth, noWarmth } from "./warmth.ts";

type HolesQuestion = LeakQuestion & { readonly knownHoles: KnownHoles };

/** The equal hole in place of alpha, area and flow: the tester may have no restrictor.
 *  @param reading - as pressures, where the supply is known @source handbook/leakdown.md H.2 (d) */
export const answerByHoles = (question: HolesQuestion, reading: LeakReading | undefined): LeakAnswer => {
  const { typed, restrictor, other, warmth = noWarmth, model } = question;
  const judgement = reading === undefined ? undefined : judgeLeak(reading, restrictor, model);
  const byHoles = judgement?.kind === "disagree" ? undefined : foundBy(question, reading);
  const unfit = refusalOf(question, { judgement, byHoles, reading });
  const lost = reading === undefined ? undefined : (reading.supply - reading.cylinder) / reading.supply;
  const part = lost ?? (typed.kind === "lost" ? typed.lost : undefined);
  const told = {
    ...(part === undefined ? {} : { lost: part }),
    ...(reading === undefined ? {} : { reading }),
    ...(judgement === undefined || judgement.kind === "measured" ? {} : { judgement }),
    ...(byHoles === undefined || unfit === "holes-other-supply" ? {} : { byHoles: warmed(byHoles, warmth) }),
  };
  if (reading !== undefined && other !== undefined && isUnchanged(reading, other))
    return { ...told, unchanged: "same-tester", restated: asRead(reading), ...refusedFor(unfit) };
  if (unfit !== undefined || other === undefined || byHoles?.kind !== "measured")
    return { ...told, ...refusedFor(unfit) };
  const cylinder = reading?.cylinder ?? (typed.kind === "pressure" ? typed.cylinder : undefined);
  if (cylinder === undefined) return { ...told, refused: "supply-unknown" };
  const { ambient } = question;
  const supply = other.supply ?? reading?.supply;
  return {
    ...told,
    ...restateHole(
      { ...byHoles, cylinder, ambient },
      { ...other, ...(supply === undefined ? {} : { supply }) },
      model,
    ),
  };
};

type Refusal = RestateRefusal | HolesRefusal;

const refusedFor = (refused: Refusal | undefined): { readonly refused?: Refusal } =>
  refused === undefined ? {} : { refused };

/** Undefined where the holes tell nothing of it. */
const foundBy = (
  { typed, knownHoles: { holes }, uDial }: HolesQuestion,
  reading: LeakReading | undefined,
): HoleOfReading | undefined => {
  const cool = reading === undefined ? undefined : { ...reading, warmth: noWarmth };
  return typed.kind === "pressure"
    ? holeByHoles({ holes, holds: "pressure", value: typed.cylinder, uDial, reading: cool })
    : holeByHoles({ holes, holds: "lost", value: typed.lost, uDial, reading: cool });
};

/** The holes were open to cool air; the air that leaks from a warm cylinder is thinner. */
const warmed = (found: HoleOfReading, { factor, uncertainty }: Warmth): HoleOfReading => {
  if (found.kind !== "measured") return found;
  const hole = length(found.hole * Math.sqrt(factor));
  return { ...found, hole, uHole: hole * Math.hypot(found.uHole / found.hole, uncertainty / 2) };
};

interface Found {
  readonly judgement: LeakJudgement | undefined;
  readonly byHoles: HoleOfReading | undefined;
  readonly reading: LeakReading | undefined;
}

/** What leaves no hole to tell, and so nothing to restate. */
const refusalOf = (
  { typed, knownHoles, other, uDial }: HolesQuestion,
  { judgement, byHoles, reading }: Found,
): Refusal | undefined => {
  if (judgement?.kind === "disagree") return "gauges-disagree";
  if (judgement?.kind === "no-seal") return other === undefined ? undefined : "no-seal";
  const apart = Math.abs((reading?.supply ?? 0) - (knownHoles.supply ?? reading?.supply ?? 0));
  if (reading !== undefined && typed.kind === "pressure" && apart > 2 * Math.SQRT2 * uDial)
    return "holes-other-supply";
  if (byHoles !== undefined) return byHoles.kind === "measured" ? undefined : `holes-${byHoles.kind}`;
  if (judgement?.kind !== "tight") return "holes-too-few";
  return other === undefined ? undefined : "too-tight";
};

/** The same tester, the same supply: the same reading. */
const asRead = (reading: LeakReading): Restated => {
  const drop = reading.supply - reading.cylinder;
  return {
    reading: readingAt({ ...reading, restrictor: {} }, drop, isentropicFlow),
    laminarLost: drop / reading.supply,
    uLost: lostUncertainty(reading),
  };
};
