// A small command over the file layer, to be killed at any moment or run many at once. Prints `saved` when it has saved.
//   driver start LOGBOOK             makes gauges.csv
//   driver enter LOGBOOK MARK ROWS   appends ROWS rows to pump/tests.csv and one to pump/notes.csv
//   driver amend LOGBOOK MARK VALUE  replaces the value in gauges.csv and appends to pump/amendments.csv
//   driver new LOGBOOK MARK          makes the folder of an engine with two files and a row in gauges.csv
//   driver undo LOGBOOK              takes back the last command
//   driver settle LOGBOOK            puts the logbook in order
//   driver burst LOGBOOK MARK COUNT  COUNT commands of one row each, numbered under the lock

import { settle } from "../../packages/cli/src/logbook/settle.ts";
import { undo } from "../../packages/cli/src/logbook/undo.ts";
import { nodeWorld } from "../../packages/cli/src/logbook/world.ts";
import { write, type Change } from "../../packages/cli/src/logbook/write.ts";

const [what = "", root = "", mark = "", last = "1"] = process.argv.slice(2);
const world = nodeWorld({
  env: process.env,
  cwd: process.cwd(),
  now: () => "2026-05-02T10:00:00",
  err: (text) => void process.stderr.write(text),
});

const rows = (path: string, make: (before: string) => readonly string[]): Change => ({
  kind: "append",
  path,
  header: "name,mark,value",
  rows: (current) => make(current?.text ?? ""),
});
const send = async (...changes: readonly Change[]): Promise<void> => {
  await write(world, { root, command: process.argv.slice(2).join(" "), changes });
};
const numbered = (path: string): Change =>
  rows(path, (text) => [`${String(text.split("\n").length)},${mark},x`]);

const acts: Readonly<Record<string, () => Promise<unknown>>> = {
  start: () =>
    send({ kind: "create", path: "gauges.csv", text: "name,mark,value\nred,gauge,99\nblue,gauge,1\n" }),
  enter: () =>
    send(
      rows("pump/tests.csv", () =>
        Array.from({ length: Number(last) }, (_, n) => `${String(n)},${mark},${"y".repeat(90)}`),
      ),
      rows("pump/notes.csv", () => [`n,${mark},z`]),
    ),
  amend: () =>
    send(
      {
        kind: "replace",
        path: "gauges.csv",
        text: (current) => current.text.replace(/^red,[^\n]*$/m, `red,gauge,${last}`),
      },
      rows("pump/amendments.csv", () => [`a,${mark},${last}`]),
    ),
  new: () =>
    send(
      { kind: "create", path: `engine-${mark}/engine.json`, text: "{}\n" },
      { kind: "create", path: `engine-${mark}/tests.csv`, text: "h\n" },
      rows("gauges.csv", () => [`g,${mark},w`]),
    ),
  undo: () => undo(world, root),
  settle: () => settle(world, root, "read"),
  burst: async () => {
    for (let n = 0; n < Number(last); n += 1) await send(numbered("pump/tests.csv"));
  },
};

await acts[what]?.();
process.stdout.write("saved\n");
