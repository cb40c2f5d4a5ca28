// The JSON of `how`: sealtrend/how@1.

import type { Engine, Procedure, ProcedureKind } from "@sealtrend/core";

/** What is undefined is left out when the document is written. */
export const howDocument = (kind: ProcedureKind, engine: Engine | undefined, procedure: Procedure) => ({
  schema: "sealtrend/how@1",
  kind,
  engine: engine === undefined ? undefined : { id: engine.id, name: engine.name },
  title: procedure.title,
  before: procedure.before,
  steps: procedure.steps,
  cautions: procedure.cautions,
  voids: procedure.voids,
  refused: procedure.refused,
  sources: procedure.sources,
});
