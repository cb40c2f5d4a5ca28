// A logbook in a folder of its own, and command lines run on it inside the test.

import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { run } from "sealtrend";
import { onTestFinished } from "vitest";
import { fakeIo } from "../fake-io.ts";

export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
  /** stdout as JSON. */
  readonly json: () => unknown;
  readonly asked: readonly string[];
}

export interface MendPlace {
  readonly folder: string;
  /** Runs one command line; `answers` makes it a terminal where each question gets the next one. */
  run(words: readonly string[], answers?: readonly string[]): Promise<Ran>;
  text(name: string): string;
  bytes(name: string): Buffer;
  put(name: string, content: string | Uint8Array): void;
  /** Every file of the logbook with its bytes, to see that nothing changed. */
  picture(): Readonly<Record<string, string>>;
}

/** @param files - by their path in the logbook */
export const mendPlace = (files: Readonly<Record<string, string | Uint8Array>>): MendPlace => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "sealtrend-mend-")));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const root = join(folder, "logbook");
  mkdirSync(root);
  const env = { HOME: folder, XDG_DATA_HOME: join(folder, "data"), XDG_STATE_HOME: join(folder, "state") };
  const at = (name: string): string => join(root, name);
  const put = (name: string, content: string | Uint8Array): void => {
    mkdirSync(dirname(at(name)), { recursive: true });
    writeFileSync(at(name), content);
  };
  for (const [name, content] of Object.entries(files)) put(name, content);
  return {
    folder,
    run: async (words, answers) => {
      const io = fakeIo({
        env,
        cwd: folder,
        ...(answers === undefined ? {} : { interactive: true, answers }),
      });
      const exit = await run(words, io);
      return {
        exit,
        out: io.stdout(),
        err: io.stderr(),
        json: () => JSON.parse(io.stdout()) as unknown,
        asked: io.asked(),
      };
    },
    text: (name) => readFileSync(at(name), "utf8"),
    bytes: (name) => readFileSync(at(name)),
    put,
    picture: () =>
      Object.fromEntries(
        readdirSync(root, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile())
          .map((entry) => join(entry.parentPath, entry.name))
          .sort()
          .map((path) => [path.slice(root.length + 1), readFileSync(path, "latin1")]),
      ),
  };
};

export const boatJson =
  '{\n  "name": "The boat",\n  "cylinders": ["1", "2", "3", "4"],\n  "ignition": "spark",\n  "meter": "h"\n}\n';
export const testsHeader =
  "test,date,meter,what,take,gauge,unit,c1,c2,c3,c4,altitude_m,altitude_ft,air_temp_C,crank_rpm,engine_temp,engine_temp_C,regulated_psi,by,set_aside,note";
export const servicesHeader = "date,meter,what,cylinders,new_baseline,by,note";
export const notesHeader = "date,meter,what,value,unit,cylinders,by,note";

/** A boat with two tests: the first by two gauges, the second with repeats. */
export const boatTests = [
  testsHeader,
  "2025-05-10a,2025-05-10,600,dry,1,red,psi,126,125,124,127,350,,20,,warm,,,me,,",
  "2025-05-10a,2025-05-10,,dry,1,blue,psi,128,127,126,129,,,,,,,,me,,",
  "2026-05-02a,2026-05-02,640,dry,1,red,psi,126,125,111,131,,1148,18,,warm,,,me,,first note",
  "2026-05-02a,2026-05-02,,dry,2,red,psi,127,124,112,130,,,,,,,,me,,",
  "",
].join("\n");

export const boat = (): MendPlace =>
  mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": boatTests,
    "boat/services.csv": `${servicesHeader}\n`,
    "boat/notes.csv": `${notesHeader}\n`,
  });
