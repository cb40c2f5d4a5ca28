// A new engine, as the files to create: used by `engine add` and by `enter --new`.

import {
  type Engine,
  type JsonObject,
  engineFields,
  engineHeaders,
  expectation,
  fits,
  gaugeHeader,
  jsonText,
  newLogbookText,
  readEngine,
} from "@sealtrend/core/parts";
import { Stop } from "../command.ts";
import { newEngineFault } from "../logbook/engine-id.ts";
import { isThere } from "../logbook/inside.ts";
import type { World } from "../logbook/world.ts";
import type { Change } from "../logbook/write.ts";
import { numberNamed } from "../render/words.ts";
import { usage } from "./usage.ts";

/** `4` and `four` make 1 2 3 4; `"1 2 3 4"` or `"L R"` are labels. @throws Stop 2 */
export const cylinderLabels = (typed: string): readonly string[] => {
  const text = typed.trim();
  const many = numberNamed(text) ?? (/^\d{1,2}$/.test(text) ? Number(text) : undefined);
  const labels =
    many === undefined ? text.split(/[\s,]+/) : Array.from({ length: many }, (_, i) => String(i + 1));
  const field = engineFields.cylinders;
  if (field === undefined || !fits(field, labels))
    throw usage(
      "cylinders-bad",
      `--cylinders ${typed}`,
      field === undefined ? "" : expectation(field),
      shortLabels(labels) ?? "--cylinders 4",
    );
  return labels;
};

/** Words such as Left and Right by their first letters, where these differ. */
const shortLabels = (labels: readonly string[]): string | undefined => {
  const letters = labels.map((label) => label.slice(0, 1).toUpperCase());
  const isShort =
    letters.every((letter) => /^[A-Z]$/.test(letter)) && new Set(letters).size === letters.length;
  return isShort && labels.length > 1 ? `--cylinders "${letters.join(" ")}"` : undefined;
};

export interface NewEngine {
  readonly engine: Engine;
  readonly changes: readonly Change[];
}

/** The files of a new engine in `root`; those of the logbook too where it has none yet.
 *  @throws Stop 2 for a name that cannot be one or is taken, or fields that do not fit */
export const newEngine = (
  world: World,
  root: string,
  id: string,
  fields: JsonObject,
  rows: Readonly<Record<string, readonly string[]>> = {},
): NewEngine => {
  const fault = newEngineFault(world, root, id);
  if (fault !== undefined) throw new Stop(2, [fault]);
  const document = { schema: "sealtrend/engine@1", name: id, ...fields };
  const text = jsonText(document);
  const { engine, problems } = readEngine(text, `${id}/engine.json`, id);
  const errors = problems.filter(({ severity }) => severity === "error");
  if (engine === undefined || errors.length > 0)
    throw new Stop(
      2,
      errors.map(({ code, severity, found, expected, mend }) => ({ code, severity, found, expected, mend })),
    );
  const create = (path: string, content: string): Change => ({ kind: "create", path, text: content });
  const shared = (
    [
      ["logbook.json", newLogbookText()],
      ["gauges.csv", `${gaugeHeader}\n`],
    ] as const
  ).filter(([name]) => !isThere(world, `${root}/${name}`));
  const tables = Object.entries(engineHeaders(engine.cylinders)).map(([name, header]) =>
    create(`${id}/${name}`, [header, ...(rows[name] ?? []), ""].join("\n")),
  );
  return {
    engine,
    changes: [
      ...shared.map(([name, content]) => create(name, content)),
      create(`${id}/engine.json`, text),
      ...tables,
    ],
  };
};
