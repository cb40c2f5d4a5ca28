// The JSON of `engine add`, `list`, `show` and `set`: sealtrend/engines@1. Each engine's fields are those of its file.

import type { EngineOverview } from "../logbook/engine-overview.ts";
import type { MissingField } from "./missing-fields.ts";

export interface WrittenTo {
  readonly file: string;
  /** The field that was set or removed; absent for a new engine. */
  readonly path?: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

/** What is undefined is left out when the document is written. */
export const enginesDocument = (
  logbook: string,
  engines: readonly { readonly overview: EngineOverview; readonly missing: readonly MissingField[] }[],
  written?: WrittenTo,
) => ({
  schema: "sealtrend/engines@1",
  logbook,
  engines: engines.map(({ overview, missing }) => ({
    id: overview.id,
    file: overview.file,
    tests: overview.tests,
    last: overview.last,
    faults: overview.faults.length,
    engine: overview.fields,
    missing: missing.map(({ path, why }) => ({ path, why })),
  })),
  written,
});
