// Rows of measurements.csv, read.

import { measurementColumns, readMeasurements } from "@sealtrend/core/parts";
import { engine, marked } from "./sample.ts";

export const header = measurementColumns.join(",");
export const read = (rows: string, columns = header) =>
  readMeasurements(`${columns}\n${rows}\n`, "measurements.csv", engine);
export const faults = (rows: string, columns = header) =>
  marked(read(rows, columns).problems, `${columns}\n${rows}\n`);
