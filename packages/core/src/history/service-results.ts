// Every work of the history with what it changed.

import { at } from "./at.ts";
import type { Work } from "./epochs.ts";
import type { Layout } from "./layout.ts";
import type { ServiceResult } from "./result.ts";
import { adjoiningRises } from "./service-adjoining.ts";
import { serviceSteps, wholeEngineStep } from "./service-step.ts";

export const serviceResults = (layout: Layout): readonly ServiceResult[] =>
  layout.works.map((work, k) =>
    resultOf(work, layout, { since: layout.works[k - 1], until: layout.works[k + 1] }),
  );

const resultOf = (
  work: Work,
  { tests, rows, x, labels, noise }: Layout,
  { since, until }: { readonly since: Work | undefined; readonly until: Work | undefined },
): ServiceResult => {
  const around = {
    tests,
    x,
    noise,
    cylinders: labels.length,
    before: rows.filter((row) => row >= (since?.before ?? 0) && row < work.before),
    after: rows.filter((row) => row >= work.before && row < (until?.before ?? tests.length)),
  };
  const renewed = work.renewed.map((cylinder) => at(labels, cylinder));
  const told = { before: work.before, why: work.why };
  if (work.scale === "another") return { ...told, against: "nothing", steps: [] };
  const isBetween = around.before.length > 1 && around.after.length > 0;
  const rises = isBetween ? adjoiningRises(work, around, labels) : [];
  const adjoining = rises.length === 0 ? {} : { adjoining: rises };
  if (work.touched.length === labels.length) {
    const steps = [{ labels: renewed, ...wholeEngineStep(around) }];
    return { ...told, against: "earlier-level", steps, ...adjoining };
  }
  const steps = serviceSteps(work, around).map((step, i) => ({ labels: [at(renewed, i)], ...step }));
  return { ...told, against: "untouched", steps, ...adjoining };
};
