// signs.csv and signs-by-cause.csv: signs of the whole engine, with and without a cause.

import type { Problem } from "../../problem/index.ts";
import { type Faults, type Sign, signNames } from "./faults.ts";
import {
  type SheetTexts,
  neededNumber,
  openSheet,
  partOf,
  readOrigin,
  rowForEach,
  valueForEach,
} from "./sheet.ts";

/** @param codes - of the causes, in the order of the chances to give */
export const readSigns = (
  texts: SheetTexts,
  codes: readonly string[],
  problems: Problem[],
): Faults["signs"] | undefined => {
  const backgrounds = readBackgrounds(texts, problems);
  const brings = readBrings(texts, codes, problems);
  if (backgrounds === undefined || brings === undefined) return undefined;
  return valueForEach(signNames, (name): Sign | undefined => {
    const row = backgrounds.get(name);
    return row === undefined
      ? undefined
      : { name, ...row, brings: codes.map((code) => brings.get(code)?.[name] ?? 0) };
  });
};

const readBackgrounds = (texts: SheetTexts, problems: Problem[]) => {
  const columns = ["sign", "background", "status", "source"];
  const sheet = openSheet(texts, "signs.csv", columns, problems);
  if (sheet === undefined) return undefined;
  return rowForEach(sheet, "sign", signNames, (row) => {
    const background = neededNumber(row, "background", partOf("the background", 0, 0.99));
    const origin = readOrigin(row);
    return background === undefined || origin === undefined ? undefined : { background, ...origin };
  });
};

const readBrings = (texts: SheetTexts, codes: readonly string[], problems: Problem[]) => {
  const sheet = openSheet(texts, "signs-by-cause.csv", ["cause", ...signNames], problems);
  if (sheet === undefined) return undefined;
  return rowForEach(sheet, "cause", codes, (row) =>
    valueForEach(signNames, (name) => neededNumber(row, name, partOf(`the chance of ${name}`))),
  );
};
