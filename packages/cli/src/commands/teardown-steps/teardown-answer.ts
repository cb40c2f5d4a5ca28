// What `teardown` answers: the teardown judged, after what was saved where something was.

import { judgeTeardown } from "@sealtrend/core";
import type { Answer, Args } from "../../command.ts";
import { teardownDocument } from "../../documents/teardown-document.ts";
import type { Io } from "../../io.ts";
import { saidOnce } from "../../render/aside.ts";
import { clean } from "../../render/clean.ts";
import { faultEntries, faultText } from "../../render/faults.ts";
import { savedLine } from "../../render/saved-line.ts";
import { teardownScreen } from "../../render/teardown/teardown.ts";
import { counted } from "../../render/words.ts";
import type { MeasuredEngine } from "./measured-engine.ts";
import type { SavedRows } from "./save-measurements.ts";

interface Judged {
  readonly place: MeasuredEngine;
  readonly teardown: number;
  readonly asides: readonly string[];
  readonly saved?: SavedRows;
}

/** Of a file with faults only that something was saved in it can be said. */
export const teardownAnswer = (args: Args, io: Io, { place, teardown, asides, saved }: Judged): Answer => {
  const { id, engine, measurements, problems, logbook } = place;
  const said = [...logbook.asides, ...place.asides, ...(saved?.written.asides ?? []), ...asides];
  const aside = saidOnce(said.map((line) => clean(line, 2000)));
  const first = saved === undefined ? [] : [savedText(saved, { id, teardown, width: io.width }), ""];
  const written = saved === undefined ? {} : { written: { file: saved.file, rows: saved.rows } };
  const assessment = judgeTeardown({ engine, measurements }, teardown);
  if (problems.length > 0 || assessment === undefined) {
    const text = `${first.join("\n")}\nIt is saved, but other rows have faults, so nothing can be said of it yet.\n`;
    const json = {
      schema: "sealtrend/teardown@1",
      engine: { id },
      teardown,
      ...written,
      problems: faultEntries(problems),
    };
    return { exit: 1, text, json, aside: `${aside}${faultText(problems, io.width)}` };
  }
  const lines = teardownScreen(assessment, {
    engine,
    width: io.width,
    units: args.text("units"),
    detail: args.flag("why") ? "why" : "short",
    taken: first.flatMap((line) => line.split("\n")).length,
  });
  const json = { ...teardownDocument(assessment, engine), ...written };
  return {
    exit: 0,
    text: `${[...first, ...lines].join("\n")}\n`,
    json,
    ...(aside === "" ? {} : { aside }),
  };
};

const savedText = (
  { rows, written }: SavedRows,
  { id, teardown, width }: { readonly id: string; readonly teardown: number; readonly width: number },
): string =>
  savedLine(
    clean(`saved  ${id} teardown ${String(teardown)}, ${counted(rows, "figure")}`),
    written.undo,
    width,
  );
