// gauge compare: two gauges on the same warm engine, and the link between them that is kept in gauges.csv.

import {
  type EngineRecord,
  type GaugeLink,
  type GaugePair,
  type NewLink,
  type Test,
  compareGauges,
  gaugeLink,
} from "@sealtrend/core/parts";
import { type Command, type Fault, Stop } from "../command.ts";
import { comparisonDocument } from "../documents/comparison-document.ts";
import { gaugesDocument } from "../documents/gauges-document.ts";
import { type Logbook, openLogbook } from "../logbook/open-logbook.ts";
import { type Written, write } from "../logbook/write.ts";
import { saidOnce } from "../render/aside.ts";
import { comparisonLines } from "../render/gauges/gauge-compare.ts";
import { refusalWords } from "../render/gauges/gauge-refusals.ts";
import { pressureUnit } from "../render/units.ts";
import { numberText } from "./gauge-steps/gauge-cells.ts";
import { columnsToAdd, gaugeChange, gaugesFile } from "./gauge-steps/gauge-row.ts";
import { pickRecord, pickTest } from "./pick.ts";
import { theEngine } from "./the-engine.ts";
import { typedWords } from "./typed/typed-words.ts";
import { usageFault } from "./usage.ts";

const options = [
  { name: "test", value: "ID", help: "the test that holds both (default the latest that does)" },
];

export const gaugeCompare: Command = {
  name: "gauge compare",
  summary: "how two gauges read beside each other on the same warm engine",
  examples: ["sealtrend gauge compare --test 2026-05-03a", "sealtrend gauge compare pump --test latest"],
  positionals: [theEngine],
  options,
  run: async (args, io) => {
    const { logbook, record } = await pickRecord(args, io);
    const { world, root } = logbook;
    const { id, name } = record.engine;
    const test = testOf(record, args.text("test"));
    const pairs = compareGauges(record, test);
    if (pairs.length === 0) throw new Stop(1, [oneGaugeOnly(record, test)]);
    const links = pairs.map((pair) => linkToKeep(logbook, pair));
    if (pairs.every(({ standing }) => standing.kind === "refused"))
      throw new Stop(
        1,
        pairs.map((pair) => refusal(pair, record, test)),
      );
    const kept = logbook.facts.demo ? [] : oneEach(links);
    const command = typedWords(args, "gauge compare", id, options);
    const added = kept.length === 0 ? [] : columnsToAdd(logbook, linkColumns);
    const written =
      kept.length === 0
        ? undefined
        : await write(world, {
            root,
            command,
            changes: [
              gaugeChange(
                logbook,
                kept.map((link) => cellsOf(link, test)),
              ),
            ],
          });
    const now = kept.length === 0 ? logbook : await openLogbook(world, "read", root);
    const changed = now.gauges.filter((gauge) => kept.some((link) => link.gauge === gauge.id));
    const unit = pressureUnit(args.text("units"), logbook.facts, unitOf(test, pairs));
    const compared = pairs.map((pair, i) => ({
      pair,
      link: links[i],
      replaced: written?.files.length === 0 ? undefined : linkUntilNow(logbook, links[i]),
    }));
    const lines = comparisonLines(
      { record, test, compared, undo: written?.undo ?? "not-possible", kept: keptAs(logbook, written) },
      { unit, width: io.width, detail: args.flag("why") ? "why" : "short" },
    );
    const aside = saidOnce([...logbook.asides, ...added, ...(written?.asides ?? [])]);
    const file = { file: gaugesFile(logbook), rows: kept.length };
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: {
        ...gaugesDocument(logbook.root, changed, written === undefined ? undefined : file),
        engine: { id, name },
        test: { id: test.id, date: test.date },
        comparisons: compared.map((one) => comparisonDocument(record, test, one.pair, one)),
      },
      ...(aside === "" ? {} : { aside }),
    };
  },
};

const linkColumns = ["link_to", "link_factor", "link_u", "link_date"];

const linkUntilNow = ({ gauges, facts }: Logbook, link: NewLink | undefined): GaugeLink | undefined =>
  facts.demo ? undefined : gauges.find(({ id }) => id === link?.gauge)?.link;

const keptAs = ({ facts }: Logbook, written: Written | undefined): "kept" | "already" | "demo" =>
  facts.demo ? "demo" : written?.files.length === 0 ? "already" : "kept";

/** The test named, else the latest that was read with two gauges. */
const testOf = (record: EngineRecord, named: string | undefined): Test => {
  if (named !== undefined) return pickTest(record, named);
  const both = record.tests.findLast((test) => compareGauges(record, test).length > 0);
  return both ?? pickTest(record, undefined);
};

/** The link of a pair, where both gauges stand in gauges.csv. */
const linkToKeep = ({ gauges }: Logbook, pair: GaugePair): NewLink | undefined => {
  const link = gaugeLink(gauges, pair);
  const isThere = [pair.gauge, pair.to].every((name) => gauges.some(({ id }) => id === name));
  return isThere ? link : undefined;
};

/** The links there are; a gauge has one. */
const oneEach = (links: readonly (NewLink | undefined)[]): readonly NewLink[] =>
  links
    .flatMap((link) => link ?? [])
    .filter((link, i, all) => all.findIndex(({ gauge }) => gauge === link.gauge) === i);

const cellsOf = ({ gauge, to, factor, uncertainty }: NewLink, { date }: Test) => ({
  gauge,
  cells: {
    link_to: to,
    link_factor: numberText(factor),
    link_u: String(Number(uncertainty.toFixed(6))),
    link_date: date,
  },
});

const unitOf = (test: Test, pairs: readonly GaugePair[]) =>
  test.rows
    .filter(({ what }) => pairs.some((pair) => pair.what === what))
    .flatMap(({ unit }) => (unit === "%" ? [] : [unit]))[0];

const oneGaugeOnly = ({ engine }: EngineRecord, test: Test): Fault => {
  const [row] = test.rows;
  const what = row?.what ?? "dry";
  const reading = (i: number): string => (what.startsWith("leak") ? "72/80" : String(150 - i));
  const example = engine.cylinders.map((_, i) => reading(i)).join(" ");
  return usageFault(
    "gauge-alone",
    `test ${test.id} of ${engine.id} was read with ${row?.gauge ?? "one gauge"} only`,
    "the same cylinders read with a second gauge, the same day on the same warm engine",
    `sealtrend enter ${engine.id} --test ${test.id} --gauge NAME --${what} "${example}"`,
  );
};

const refusal = (pair: GaugePair, record: EngineRecord, test: Test): Fault => {
  const { standing } = pair;
  if (standing.kind !== "refused") throw new TypeError("refusal: the pair was measured");
  const { found, expected, mend } = refusalWords(pair, {
    engine: record.engine.id,
    of: record.engine.cylinders.length,
    test: test.id,
  });
  return usageFault(standing.code, found, expected, mend);
};
