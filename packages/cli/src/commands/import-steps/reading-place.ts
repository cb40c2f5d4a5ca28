// Where in the sheet a reading stands that a message is about.

import type { ImportedTest, Place } from "@sealtrend/core/parts";

/** @param row - which of the test's  @param label - of its cylinder; the row's first reading where it is not said */
export const readingPlace = ({ rows, cylinders }: ImportedTest, row: number, label?: string): Place => {
  const at = label === undefined ? -1 : cylinders.indexOf(label);
  return rows[row]?.from.place(at === -1 ? undefined : at) ?? {};
};
