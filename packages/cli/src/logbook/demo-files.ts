// The files of the demo logbook: beside the bundle (dist/demo), or in the sources (data/demo).

import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Stop } from "../command.ts";
import { engineIds } from "./engine-id.ts";
import { isThere } from "./inside.ts";
import { readFile } from "./read-file.ts";
import { fileFault } from "./words.ts";
import type { World } from "./world.ts";

/** The bundle stands in for `import.meta.url` with its own place. */
const places = ["./demo/", "../../../../data/demo/"].map((path) =>
  fileURLToPath(new URL(path, import.meta.url)),
);

export interface DemoFile {
  /** Relative to the logbook. */
  readonly path: string;
  readonly text: string;
}

/** Every file of the logbook, none of what stands beside it. @throws Stop 3 where this installation lacks them */
export const demoFiles = (world: World): readonly DemoFile[] => {
  const folder = places.find((place) => isThere(world, join(place, "logbook.json")));
  if (folder === undefined) throw new Stop(3, [fileFault("file-missing", { file: "demo/logbook.json" })]);
  const at = (path: string): DemoFile => ({ path, text: readFile(world, join(folder, path)).text });
  const tables = engineIds(world, folder).flatMap((name) =>
    [...world.fs.readdirSync(join(folder, name))]
      .sort()
      .filter((file) => /^[a-z]+\.(csv|json)$/.test(file))
      .map((file) => `${name}/${file}`),
  );
  return ["logbook.json", "gauges.csv", ...tables].map(at);
};
