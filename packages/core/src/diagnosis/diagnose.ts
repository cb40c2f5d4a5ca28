// From what was found to ranked causes, what speaks for them, and the next test.

import { evenLossOf, hasDirectEvidence } from "./answer/direct.ts";
import { withEvenLevels } from "./answer/even-level.ts";
import { groupsOf } from "./answer/groups.ts";
import { misfitsOf } from "./answer/misfits.ts";
import { rankedCauses } from "./answer/ranked-causes.ts";
import { findingWitnesses, signWitnesses } from "./answer/reasons.ts";
import { targetOf } from "./answer/target.ts";
import { twoFaultsOf } from "./answer/two-faults.ts";
import type { Diagnosis } from "./diagnosis.ts";
import type { Evidence } from "./evidence.ts";
import type { Faults } from "./faults/faults.ts";
import { shippedFaults } from "./faults/shipped-faults.ts";
import { dayOf } from "./model/day.ts";
import { observedOn } from "./model/observed.ts";
import { posteriors } from "./model/posterior.ts";
import { priorsOf } from "./model/priors.ts";
import { signsSeen } from "./model/signs.ts";
import { isEnough, proposedTests, readAgainTest } from "./next/proposed-tests.ts";

/** Below it the first cause does not stand out, and the group leads. @source handbook/diagnosis.md 5.3, judgement */
const standsOut = 0.35;

/** Causes of the target cylinder by their chances given everything found, and the tests that are left.
 *  @param evidence - of one test, pressures corrected alike [Pa gauge]; at least one cylinder
 *  @param faults - the tables; all their numbers are judgement
 *  @throws RangeError without a cylinder, for a word that is no class of its finding, or tables that lack a cause
 *  @source handbook/diagnosis.md 5, 6 @checked tests/core/diagnosis/worked.test.ts (computed in the handbook) */
export const diagnose = (evidence: Evidence, faults: Faults = shippedFaults()): Diagnosis => {
  if (evidence.cylinders.length === 0) throw new RangeError("diagnose: an engine has at least one cylinder");
  const [day, priors] = [dayOf(evidence, faults), priorsOf(evidence, faults)];
  const seen = signsSeen(evidence, faults);
  const posteriorWith = posteriors(evidence, { faults, day, priors });
  const posterior = posteriorWith(seen);
  const target = targetOf(posterior.cylinders, evidence, faults);
  const chances = posterior.cylinders[target] ?? [];
  const observed = observedOn(target, evidence, { faults, day, posterior });
  const findings = findingWitnesses(withEvenLevels(observed, evidence, { faults, day, posterior }), faults);
  const signs = signWitnesses(
    seen,
    chances,
    (name) => posteriorWith(seen.filter((one) => one.name !== name)).cylinders[target] ?? [],
  );
  const capped = !hasDirectEvidence(observed, evidence);
  const evenLoss = evenLossOf(evidence);
  const { banks } = evidence;
  const causes = rankedCauses(target, [...findings, ...signs], {
    faults,
    posterior,
    banks,
    capped,
    evenLoss,
  });
  const [leading] = causes;
  const misfits = leading === undefined ? [] : misfitsOf(leading.code, findings, { faults, posterior });
  const twoFaults = twoFaultsOf(observed, evidence.cylinders[target] ?? {}, {
    faults,
    priors: priors.local[target] ?? [],
    chances,
    misfits,
  });
  const known = { evidence, faults, told: observed.map(({ finding }) => finding) };
  const tests = proposedTests(target, chances, known);
  const again = tests.some(({ test }) => test.findings.includes("repeats"))
    ? undefined
    : readAgainTest(chances, known);
  return {
    target,
    causes,
    groups: groupsOf(chances, faults),
    leads: (leading?.probability ?? 0) < standsOut ? "group" : "cause",
    capped,
    states: likeliestFirst(posterior.states),
    pairs: likeliestFirst(posterior.pairs),
    cylinders: posterior.cylinders,
    ...(posterior.level === undefined ? {} : { level: posterior.level }),
    ...(posterior.oilFactor === undefined ? {} : { oilFactor: posterior.oilFactor }),
    evenLoss,
    misfits,
    ...(twoFaults === undefined ? {} : { twoFaults }),
    tests,
    ...(again === undefined ? {} : { again }),
    enough: isEnough(tests),
  };
};

const likeliestFirst = <T extends { readonly probability: number }>(all: readonly T[]): readonly T[] =>
  all.toSorted((a, b) => b.probability - a.probability);
