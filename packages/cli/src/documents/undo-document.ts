// The JSON of `undo`, sealtrend/undo@1.

import type { Undone } from "../logbook/undo.ts";
import { shown } from "../logbook/words.ts";

/** @param cwd - the working folder, below which paths are shown short */
export const undoDocument = ({ command, when, files }: Undone, cwd: string) => ({
  schema: "sealtrend/undo@1",
  command,
  when,
  files: files.map(({ path, what }) => ({ file: shown(cwd, path), what })),
});
