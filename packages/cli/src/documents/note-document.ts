// The JSON of `note`, sealtrend/note@1.

import type { Engine, Note } from "@sealtrend/core";

/** @param file - the file written to, as shown */
export const noteDocument = (note: Note, engine: Engine, file: string) => ({
  schema: "sealtrend/note@1",
  engine: { id: engine.id, name: engine.name },
  note,
  written: { file, rows: 1 },
});
