// The JSON of `demo`: sealtrend/demo@1.

import type { TestAssessment } from "@sealtrend/core";
import { showHeadline } from "../render/show/show-headline.ts";

export interface DemoAnswer {
  readonly folder: string;
  readonly state: "new" | "there";
  readonly engines: readonly TestAssessment[];
  readonly star: TestAssessment | undefined;
  readonly next: readonly string[];
}

/** What is undefined is left out when the document is written. */
export const demoDocument = ({ folder, state, engines, star, next }: DemoAnswer) => ({
  schema: "sealtrend/demo@1",
  demo: true,
  logbook: folder,
  laidOut: state === "new",
  engines: engines.map((assessment) => ({
    id: assessment.record.engine.id,
    name: assessment.record.engine.name,
    test: { id: assessment.test.id, date: assessment.test.date },
    trust: assessment.trust.code,
    says: showHeadline(assessment),
    cylinders: assessment.cylinders.map(({ label, standing, belowOthers }) => ({
      label,
      standing,
      belowOthers,
    })),
  })),
  star: star?.record.engine.id,
  next,
});
