// A map as a person has edited it: every entry is checked, and each fault says where it stands and what may stand there.

import { type Outcome, type Place, type Problem, bad, good, nearest, problem } from "../../problem/index.ts";
import { isConditionColumn } from "../conditions.ts";
import { type JsonObject, type JsonView, isObject, viewJson } from "../json-view.ts";
import type { EngineOfSheet, ImportMap, Source } from "./import-map.ts";
import { enginesAtOdds } from "./engines-at-odds.ts";
import { attributes } from "./fit-map.ts";
import { fixedExpected } from "./fixed-values.ts";
import { mapConditions, mapEntries } from "./map-entries.ts";
import { dateOrders, decimalMarks, sameDayRules, separators } from "./map-words.ts";
import { usualNotTaken } from "./usual-not-taken.ts";
import { isEngineId, suggestEngineId } from "./suggest-engine-id.ts";

/** A map as a person edited it, checked, with the place of every entry. */
export interface ReadMap {
  readonly map: ImportMap;
  /** Where an entry stands in the map's file. */
  place(path: string): Place;
}

const keys: readonly string[] = mapEntries.map(({ name }) => name);

const cylinderRule =
  'its cylinders in order, each once, of up to 4 letters or digits: ["1", "2", "3", "4"]; [] takes those of the sheet';
const sourceKeys = ["column", "headerRow", "fixed", "fill"];

/** Reads a map; every fault of it is named. */
export const readImportMap = (text: string, file: string): Outcome<ReadMap> => {
  const problems: Problem[] = [];
  const view = viewJson(text, file, problems);
  if (view === undefined) return bad(problems);
  const map = new MapReader(view, problems).map();
  return problems.length > 0 ? bad(problems) : good({ map, place: (path) => view.place(path) });
};

class MapReader {
  readonly #view: JsonView;
  readonly #problems: Problem[];
  constructor(view: JsonView, problems: Problem[]) {
    this.#view = view;
    this.#problems = problems;
  }

  map(): ImportMap {
    const { root } = this.#view;
    this.#strangers(root, "", keys);
    if (root.schema !== "sealtrend/import-map@1")
      this.#bad("schema", root.schema, '"sealtrend/import-map@1"');
    const firstRow = this.#rowNumber("firstRow") ?? Infinity;
    if (root.firstRow === undefined) this.#missing("firstRow", "2");
    const lastRow = this.#rowNumber("lastRow");
    if (lastRow !== undefined && Number.isFinite(firstRow) && lastRow < firstRow)
      this.#bad("lastRow", lastRow, `a row from ${String(firstRow)} on`);
    const encoding = root.encoding;
    if (encoding !== undefined && typeof encoding !== "string")
      this.#bad("encoding", encoding, "a name in quotes");
    const delimiter = this.#word("delimiter", separators);
    const decimal = this.#word("decimal", decimalMarks);
    const dates = this.#word("dates", dateOrders);
    const conditions = this.#conditions(firstRow);
    const sources = attributes.flatMap((name) => {
      const source = this.#source(name, root[name], firstRow);
      return source === undefined ? [] : [[name, source] as const];
    });
    return {
      schema: "sealtrend/import-map@1",
      ...(typeof encoding === "string" ? { encoding } : {}),
      ...(delimiter === undefined ? {} : { delimiter }),
      ...(decimal === undefined ? {} : { decimal }),
      ...(dates === undefined ? {} : { dates }),
      firstRow,
      ...(lastRow === undefined ? {} : { lastRow }),
      readings: { columns: this.#readings() },
      ...Object.fromEntries(sources),
      ...(conditions === undefined ? {} : { conditions }),
      notTaken: this.#texts("notTaken", root.notTaken) ?? usualNotTaken,
      sameDay: this.#word("sameDay", sameDayRules) ?? "takes",
      engines: this.#engines(),
    };
  }

  #readings(): readonly string[] {
    const { readings } = this.#view.root;
    if (!isObject(readings)) {
      this.#missing("readings", '{ "columns": ["C-F"] }', readings);
      return [];
    }
    this.#strangers(readings, "readings", ["columns"]);
    const columns = this.#texts("readings.columns", readings.columns);
    if (columns === undefined || columns.length === 0) this.#missing("readings.columns", '["C-F"]');
    return columns ?? [];
  }

  #source(path: string, value: unknown, firstRow: number): Source | undefined {
    if (value === undefined) return undefined;
    const shape = '{ "column": "B" }, { "headerRow": 1 } or { "fixed": "…" }';
    if (!isObject(value)) return this.#bad(path, value, shape);
    this.#strangers(value, path, path === "date" ? [...sourceKeys, "above"] : sourceKeys);
    const { column, headerRow, fixed, fill, above } = value;
    if (path === "date" && above === true && Object.keys(value).length === 1) return { above };
    if (path === "date" && above !== undefined) return this.#bad(path, value, '{ "above": true } alone');
    const given = [column, headerRow, fixed].filter((one) => one !== undefined);
    if (given.length !== 1) return this.#bad(path, value, `one of ${shape}`);
    if (fill !== undefined && typeof fill !== "boolean")
      return this.#bad(`${path}.fill`, fill, "true or false");
    const filled = fill === true ? { fill } : {};
    if (typeof column === "string" && column.trim() !== "") return { column: column.trim(), ...filled };
    if (column !== undefined)
      return this.#bad(`${path}.column`, column, 'the letters of a column, such as "B"');
    if (fixed !== undefined) return this.#fixed(path, fixed);
    if (typeof headerRow !== "number" || !Number.isInteger(headerRow) || headerRow < 1)
      return this.#bad(`${path}.headerRow`, headerRow, "a row number such as 1");
    if (headerRow >= firstRow) {
      const facts = { row: headerRow, firstRow };
      this.#problems.push(problem("import-header-below", facts, this.#view.place(`${path}.headerRow`)));
      return undefined;
    }
    return { headerRow, ...filled };
  }

  /** What is fixed for the whole sheet can be checked at once. */
  #fixed(path: string, fixed: unknown): Source | undefined {
    const where = `${path}.fixed`;
    if (typeof fixed !== "string" || fixed.trim() === "") return this.#bad(where, fixed, "a text in quotes");
    const expected = fixedExpected(path, fixed);
    return expected === undefined ? { fixed: fixed.trim() } : this.#bad(where, fixed, expected);
  }

  #conditions(firstRow: number): ImportMap["conditions"] {
    const { conditions } = this.#view.root;
    if (conditions === undefined) return undefined;
    if (!isObject(conditions))
      return this.#bad("conditions", conditions, '{ "air_temp_C": { "column": "G" } }');
    const entries = Object.entries(conditions).flatMap(([name, value]) => {
      const path = `conditions.${name}`;
      if (!isConditionColumn(name)) this.#bad(path, value, `one of: ${mapConditions.join(", ")}`);
      const source = this.#source(path, value, firstRow);
      return source === undefined ? [] : [[name, source] as const];
    });
    return Object.fromEntries(entries);
  }

  #engines(): readonly EngineOfSheet[] {
    const { engines } = this.#view.root;
    if (!Array.isArray(engines)) {
      const example = '[{ "sheet": "Pump 1", "engine": "pump", "cylinders": ["1", "2", "3", "4"] }]';
      this.#missing("engines", example, engines);
      return [];
    }
    const read = engines.map((value: unknown, i) => this.#engine(value, `engines[${String(i)}]`));
    for (const { at, field, text, expected } of enginesAtOdds(read))
      this.#bad(`engines[${String(at)}].${field}`, text, expected);
    return read.filter((one) => one !== undefined);
  }

  #engine(value: unknown, path: string): EngineOfSheet | undefined {
    if (!isObject(value))
      return this.#bad(path, value, '{ "sheet": "Pump 1", "engine": "pump", "cylinders": ["1"] }');
    this.#strangers(value, path, ["sheet", "engine", "cylinders", "ignition"]);
    const { sheet, engine, cylinders, ignition } = value;
    if (typeof sheet !== "string" || sheet.trim() === "")
      return this.#bad(`${path}.sheet`, sheet, "the engine's name as the sheet has it");
    const id = suggestEngineId(sheet);
    if (typeof engine !== "string" || (engine !== "" && !isEngineId(engine)))
      return this.#bad(
        `${path}.engine`,
        engine,
        `an id such as "${id}", or "" to leave the engine out`,
        `write "${id}"`,
      );
    const labels = cylinders === undefined ? [] : this.#texts(`${path}.cylinders`, cylinders);
    const isGood =
      labels !== undefined &&
      labels.length <= 28 &&
      labels.every((label) => /^[A-Za-z0-9]{1,4}$/.test(label)) &&
      new Set(labels).size === labels.length;
    if (!isGood)
      return this.#bad(
        `${path}.cylinders`,
        cylinders,
        cylinderRule,
        'write ["1", "2"], or ["L", "R"] for Left and Right',
      );
    const known = (["spark", "compression", "unknown"] as const).find((word) => word === ignition);
    if (ignition !== undefined && known === undefined)
      return this.#bad(`${path}.ignition`, ignition, '"spark", "compression" or "unknown"');
    return {
      sheet: sheet.trim(),
      engine,
      cylinders: labels,
      ...(known === undefined ? {} : { ignition: known }),
    };
  }

  #texts(path: string, value: unknown): readonly string[] | undefined {
    if (value === undefined) return undefined;
    if (Array.isArray(value) && value.every((one): one is string => typeof one === "string"))
      return value.map((one) => one.trim());
    return this.#bad(path, value, 'texts in square brackets: ["…", "…"]');
  }

  #word<W extends string>(path: string, words: readonly W[]): W | undefined {
    const value = this.#view.root[path];
    const found = words.find((word) => word === value);
    if (value === undefined || found !== undefined) return found;
    const [near] = typeof value === "string" ? nearest(value, words) : [];
    const choice = words.map((word) => JSON.stringify(word)).join(", ");
    return this.#bad(path, value, `one of: ${choice}`, near === undefined ? undefined : `write "${near}"`);
  }

  #rowNumber(path: string): number | undefined {
    const value = this.#view.root[path];
    if (value === undefined) return undefined;
    return typeof value === "number" && Number.isInteger(value) && value >= 1 && value <= 1_048_576
      ? value
      : this.#bad(path, value, "a row number such as 2, as the spreadsheet counts rows");
  }

  #strangers(value: JsonObject, path: string, known: readonly string[]): void {
    for (const name of Object.keys(value).filter((one) => !known.includes(one))) {
      const key = path === "" ? name : `${path}.${name}`;
      this.#problems.push(problem("import-map-key", { key, keys: known }, this.#view.place(key)));
    }
  }

  #missing(field: string, example: string, value?: unknown): void {
    if (value !== undefined) this.#bad(field, value, example);
    else this.#problems.push(problem("field-missing", { field, example }, this.#view.place(field)));
  }

  #bad(field: string, value: unknown, expected: string, mend?: string): undefined {
    const facts = { field, text: value === undefined ? "nothing" : JSON.stringify(value), expected };
    const whole = mend === undefined ? facts : { ...facts, mend };
    this.#problems.push(problem("field-bad", whole, this.#view.place(field)));
    return undefined;
  }
}
