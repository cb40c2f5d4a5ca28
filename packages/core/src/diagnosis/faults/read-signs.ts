// signs.csv and signs-by-cause.csv: signs of the whole engine, with and without a cause.

import type { Problem } from "../../problem/index.ts";
import { type Faults, type Sign, signNames } from "./faults.ts";
import { type CauseNames, rowForEachCause } from "./cause-rows.ts";
import { neededNumber, partOf, readOrigin } from "./cells.ts";
import { rowForEach } from "./rows.ts";
import { type SheetTexts, openSheet } from "./sheet.ts";
import { valueForEach } from "./value-for-each.ts";

/** What was seen, or looked for and not seen, must stay possible. */
const surely = { not: 0.001, most: 0.99 } as const;

/** @param causes - in the order of the chances to give */
export const readSigns = (
  texts: SheetTexts,
  causes: CauseNames,
  problems: Problem[],
): Faults["signs"] | undefined => {
  const backgrounds = readBackgrounds(texts, problems);
  const brings = readBrings(texts, causes, problems);
  if (backgrounds === undefined || brings === undefined) return undefined;
  return valueForEach(signNames, (name): Sign | undefined => {
    const row = backgrounds.get(name);
    return row === undefined
      ? undefined
      : { name, ...row, brings: causes.codes.map((code) => brings.get(code)?.[name] ?? 0) };
  });
};

const readBackgrounds = (texts: SheetTexts, problems: Problem[]) => {
  const columns = ["sign", "background", "status", "source"];
  const sheet = openSheet(texts, "signs.csv", columns, problems);
  if (sheet === undefined) return undefined;
  return rowForEach(sheet, "sign", signNames, (row) => {
    const background = neededNumber(row, "background", partOf("the background", surely.not, surely.most));
    const origin = readOrigin(row);
    return background === undefined || origin === undefined ? undefined : { background, ...origin };
  });
};

const readBrings = (texts: SheetTexts, causes: CauseNames, problems: Problem[]) => {
  const sheet = openSheet(texts, "signs-by-cause.csv", ["cause", ...signNames], problems);
  if (sheet === undefined) return undefined;
  return rowForEachCause(sheet, causes, (row) =>
    valueForEach(signNames, (name) =>
      neededNumber(row, name, partOf(`the chance of ${name}`, 0, surely.most)),
    ),
  );
};
