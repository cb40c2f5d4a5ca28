// Which test is meant where nobody names one: one choice for every answer.

import type { EngineRecord, Test } from "../record/index.ts";

/** The latest that is not set aside and holds readings, else the latest; undefined without any. */
export const latestTest = ({ tests }: Pick<EngineRecord, "tests">): Test | undefined =>
  tests.findLast(({ setAside, rows }) => setAside === undefined && rows.length > 0) ?? tests.at(-1);
