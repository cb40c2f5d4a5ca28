// The causes in the JSON of `show`: of the cylinder that most needs an explanation, with all that they rest on.

import type { Evidence, CauseReason, TestAssessment } from "@sealtrend/core/parts";
import { reasonText } from "../render/show/reason-words.ts";
import { othersLow } from "../render/show/show-alike.ts";
import { causesListed } from "../render/show/show-causes-why.ts";
import { kPa } from "../render/units.ts";

type Known = Pick<TestAssessment, "diagnosis" | "evidence" | "faults" | "cylinders">;

/** Those of a hundredth and more, or the first five; empty where the test is void or set aside. */
export const causesDocument = (assessment: Known) =>
  causesListed(assessment).map((cause) => ({
    code: cause.code,
    text: assessment.faults.causes.find(({ code }) => code === cause.code)?.name,
    cylinders: labelsOf(assessment, cause.cylinders),
    group: cause.group,
    probability: cause.shown,
    uncapped: cause.probability,
    low: cause.low,
    high: cause.high,
    words: cause.word,
    for: cause.for.map((reason) => reasonDocument(assessment, reason)),
    against: cause.against.map((reason) => reasonDocument(assessment, reason)),
  }));

export const diagnosisDocument = (assessment: Known) => {
  const { diagnosis, evidence, faults } = assessment;
  if (diagnosis === undefined) return undefined;
  const { groups, target, states, pairs, twoFaults, misfits, evenLoss, leads, capped, enough, tests } =
    diagnosis;
  return {
    target: labelOf(assessment, target),
    leads,
    groups,
    capped,
    states: states.map(({ id, cause, probability }) => ({ code: id, cause, probability })),
    pairs: pairs.map(({ cylinders, probability }) => ({
      cylinders: labelsOf(assessment, cylinders),
      probability,
    })),
    twoFaults,
    alike: othersLow(assessment).map(({ labels, code, chance }) => ({
      cylinders: labels,
      code,
      probability: chance,
    })),
    misfits: misfits.map((reason) => reasonDocument(assessment, reason)),
    evenLoss,
    enough,
    tests: tests.map(({ test, bits, bitsPerHour, effort }) => ({
      code: test.code,
      text: test.action,
      bits,
      bitsPerHour,
      effort,
    })),
    level_kPa: diagnosis.level === undefined ? undefined : kPa(diagnosis.level),
    oilFactor: diagnosis.oilFactor,
    expected: expectedDocument(evidence),
    circumstances: (evidence?.circumstances ?? []).map(({ when, cylinders }) => ({
      when,
      cylinders: cylinders === undefined ? undefined : labelsOf(assessment, cylinders),
    })),
    signs: evidence?.signs,
    restrictor: evidence?.restrictor,
    obstacles: evidence?.obstacles,
    tools: evidence?.tools,
    cylinders: diagnosis.cylinders.map((chances, place) => ({
      label: labelOf(assessment, place),
      onset: evidence?.cylinders[place]?.onset,
      alpha: evidence?.restrictor === "known" ? evidence.cylinders[place]?.leak?.alpha : undefined,
      chances: Object.fromEntries(faults.causes.map(({ code }, i) => [code, chances[i] ?? 0])),
    })),
  };
};

const expectedDocument = (evidence: Evidence | undefined) =>
  evidence?.expected === undefined
    ? undefined
    : { level_kPa: kPa(evidence.expected.level), from: evidence.expected.from };

const labelOf = ({ cylinders }: Pick<Known, "cylinders">, place: number): string | undefined =>
  cylinders[place]?.label;

const labelsOf = (known: Pick<Known, "cylinders">, places: readonly number[]): readonly string[] =>
  places.flatMap((place) => labelOf(known, place) ?? []);

const reasonDocument = (known: Pick<Known, "cylinders">, reason: CauseReason) => ({
  finding: reason.finding,
  cylinder: reason.cylinder === undefined ? undefined : labelOf(known, reason.cylinder),
  word: reason.word,
  ratio: reason.ratio,
  link: reason.link,
  source: reason.source,
  text: reasonText(reason),
});
