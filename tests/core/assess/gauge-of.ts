// A gauge from the cells of its row in gauges.csv.

import { type Gauge, readGauges } from "@sealtrend/core/parts";

export const gaugeOf = (cells: Readonly<Record<string, string>>): Gauge => {
  const { gauges, problems } = readGauges(
    `${Object.keys(cells).join(",")}\n${Object.values(cells).join(",")}\n`,
    "gauges.csv",
  );
  const [gauge] = gauges;
  if (gauge === undefined || problems.length > 0) throw new Error(JSON.stringify(problems));
  return gauge;
};
