// The screens of `engine list` and `engine show`.

import { byName } from "@sealtrend/core/parts";
import type { MissingField } from "../documents/missing-fields.ts";
import { type EngineOverview, flatFields } from "../logbook/engine-overview.ts";
import { clean } from "./clean.ts";
import { clearanceTexts, offeredTexts } from "./engine-limits.ts";
import { grid, wrapText } from "./table.ts";
import { typedValue } from "./typed-value.ts";
import { cut, displayWidth, padEnd } from "./width.ts";

const head = ["engine", "cylinders", "ignition", "tests", "last", "name"];

/** An engine a line; on a narrow screen a sentence. */
export const engineLines = (engines: readonly EngineOverview[], width: number): readonly string[] => {
  const rows = engines.map(({ id, engine, tests, last, engineFaults, fields }) => {
    if (engine === undefined)
      return [id, "", "", "", "", `engine.json has ${faultCount(engineFaults.length)}`];
    const count = tests === 0 ? "none" : String(tests);
    const name = fields.name === undefined ? "" : engine.name;
    return [id, String(engine.cylinders.length), engine.ignition, count, last ?? "-", name];
  });
  const align = ["left", "right", "left", "right", "left", "left"] as const;
  if (width < narrow) return grid(rows, align, { head, width });
  return grid(rows, align, { head }).map((line) => cut(line, width));
};

const narrow = 60;

/** `1 fault`, `2 faults`. */
export const faultCount = (n: number): string => (n === 1 ? "1 fault" : `${String(n)} faults`);

/** Every field that is known, a line a group, and what would help. */
export const engineScreen = (
  { id, file, engine, fields, tests, last }: EngineOverview,
  missing: readonly MissingField[],
  width: number,
): readonly string[] => {
  const counted = tests === 0 ? "no test yet" : `${String(tests)} tests, the last ${last ?? ""}`;
  const title = `${id}: ${clean(engine?.name ?? id)}, ${counted}`;
  const gaps = missing.map(({ path, why }) => [`  ${path}`, why]);
  return [
    ...wrapText(title, width),
    ...wrapText(file, width),
    "",
    ...groupLines(fields, engine, width),
    ...(gaps.length === 0
      ? []
      : ["", "not known, and would help", ...grid(gaps, ["left", "left"], { width })]),
    "",
    ...wrapText(`change one: sealtrend engine set ${id} ${missing[0]?.path ?? "geometry.bore"} VALUE`, width),
  ];
};

/** Fields that share the way to them stand on one line, each by its last name. */
const groupLines = (
  fields: EngineOverview["fields"],
  engine: EngineOverview["engine"],
  width: number,
): readonly string[] => {
  const lists = byName<readonly string[]>(
    engine === undefined
      ? {}
      : { "limits.clearances": clearanceTexts(engine), "limits.offered": offeredTexts(engine) },
  );
  const groups = new Map<string, string[]>();
  for (const [path, value] of flatFields(fields)) {
    if (path === "schema" || path === "name") continue;
    const list = lists[path];
    if (list !== undefined) {
      groups.set(path, [...list]);
      continue;
    }
    const dot = path.lastIndexOf(".");
    const group = dot === -1 ? "engine" : path.slice(0, dot);
    const text = `${path.slice(dot + 1)}\u00a0${shown(value)}`;
    groups.set(group, [...(groups.get(group) ?? []), text]);
  }
  const left = Math.max(...[...groups.keys()].map(displayWidth));
  return [...groups].flatMap(([group, texts]) => {
    const begin = `${padEnd(clean(group), left)}  `;
    if (lists[group] === undefined) return wrapText(texts.join(", "), width, begin);
    return texts.flatMap((text, i) => wrapText(text, width, i === 0 ? begin : " ".repeat(left + 2)));
  });
};

/** Short values hold together; long ones may be broken. */
const shown = (value: unknown): string => {
  const text = /^[{[]/.test(typedValue(value))
    ? JSON.stringify(value, undefined, 1).replace(/\s+/g, " ")
    : typedValue(value);
  return text.length <= 40 ? text.replaceAll(" ", "\u00a0") : text;
};
