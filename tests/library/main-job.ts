// The whole way for every engine of a logbook, from text to text: what is run in Node, in a bare context, in a worker and in a
// browser, and has to come out the same, byte for byte.

import {
  type EngineFiles,
  type NamedText,
  assessDecision,
  assessHistory,
  assessTest,
  judgeTeardown,
  latestTest,
  procedureFor,
  readEngineRecord,
  readGauges,
  readLogbook,
  readRuleSheet,
} from "@sealtrend/core";

/** Files of a logbook by their path in it, `pump/tests.csv`, and a rule sheet as `rules.csv`. */
export type Texts = Readonly<Record<string, string>>;

const today = "2026-11-25";

/** @returns everything that is said of every engine, as JSON */
export const mainJob = async (texts: Texts): Promise<string> => {
  const textOf = (file: string): NamedText => ({ file, text: texts[file] ?? "" });
  const { logbook, problems } = readLogbook(textOf("logbook.json").text, "logbook.json");
  const { gauges } = readGauges(textOf("gauges.csv").text, "gauges.csv");
  const sheet = await readRuleSheet(textOf("rules.csv").text, "rules.csv");
  const rules = sheet.ok ? sheet.value.rules : [];
  const ids = Object.keys(texts).flatMap((file) =>
    file.endsWith("/engine.json") ? [file.split("/", 1)[0] ?? ""] : [],
  );
  const engines = ids.sort().map((id) => {
    const optional = (name: string, file = `${id}/${name}.csv`) =>
      texts[file] === undefined ? {} : { [name]: textOf(file) };
    const files: EngineFiles = {
      id,
      engine: textOf(`${id}/engine.json`),
      tests: textOf(`${id}/tests.csv`),
      ...optional("services"),
      ...optional("notes"),
      ...optional("measurements"),
    };
    const read = readEngineRecord(files, gauges, logbook);
    const { record } = read;
    if (record === undefined) return read;
    const test = latestTest(record);
    return {
      problems: read.problems,
      test: test === undefined ? undefined : assessTest(record, test, rules.length === 0 ? {} : { rules }),
      history: assessHistory(record),
      decision: assessDecision(record, { today }),
      teardown: judgeTeardown(record),
      procedure: procedureFor("dry", record.engine),
    };
  });
  return JSON.stringify({ problems, rules, engines });
};
