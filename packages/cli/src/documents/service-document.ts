// The JSON of `service`, sealtrend/service@1.

import { type Engine, type Service, runsIn } from "@sealtrend/core/parts";

/** @param file - the file written to, as shown */
export const serviceDocument = (service: Service, engine: Engine, file: string) => ({
  schema: "sealtrend/service@1",
  engine: { id: engine.id, name: engine.name },
  service,
  runIn: runsIn(service),
  written: { file, rows: 1 },
});
