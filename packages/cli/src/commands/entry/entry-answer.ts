// What `enter` says once the readings are saved: where, and what they tell.

import {
  type EngineRecord,
  type Test,
  assessTest,
  compareGauges,
  nearest,
  oilCautions,
  readEngineRecord,
} from "@sealtrend/core/parts";
import type { Answer, Args, Fault } from "../../command.ts";
import { showDocument } from "../../documents/show-document.ts";
import type { Io } from "../../io.ts";
import { type Logbook, engineFiles } from "../../logbook/open-logbook.ts";
import { asSaid } from "../../logbook/words.ts";
import type { Written } from "../../logbook/write.ts";
import { saidOnce } from "../../render/aside.ts";
import { clean } from "../../render/clean.ts";
import { faultText } from "../../render/faults.ts";
import { savedLine } from "../../render/saved-line.ts";
import { showScreen } from "../../render/show/show.ts";
import { pressureUnit, unitRead } from "../../render/units.ts";
import { joined } from "../../render/words.ts";
import type { Placed } from "./entry-place.ts";
import type { RowValues } from "./entry-context.ts";
import type { Slipped } from "./entry-slips.ts";
import { slipAsides } from "./slip-words.ts";

export interface Saved {
  readonly logbook: Logbook;
  readonly id: string;
  readonly placed: Placed;
  readonly written: Written;
  readonly rows: readonly RowValues[];
  /** Readings that look mistyped and were not asked about. */
  readonly slips: readonly Slipped[];
  /** tests.csv, as messages name it. */
  readonly file: string;
  /** What else is said on stderr. */
  readonly asides: readonly string[];
}

/** The verdict on the test that was added to. Faults of older entries are named; the new ones are saved all the same. */
export const entryAnswer = (args: Args, io: Io, saved: Saved): Answer => {
  const { logbook, id, placed, written, rows, file } = saved;
  const kinds = joined([...new Set(rows.flatMap(({ what }) => (what === "regulated" ? [] : (what ?? []))))]);
  const first = savedLine(clean(`saved  ${id} ${placed.test}, ${kinds}`), written.undo, io.width);
  const entered = { file, rows: placed.rows.length };
  const cautions: Fault[] = [];
  const files = engineFiles(logbook, id, cautions);
  const { record, problems } = readEngineRecord(files, logbook.gauges, logbook.facts);
  const errors = problems.filter(({ severity }) => severity === "error");
  const test = record?.tests.find((one) => one.id === placed.test);
  const where = logbook.place.state === "new" ? [`your logbook is ${logbook.root}`] : [];
  const asides = [
    ...where,
    ...logbook.asides,
    ...written.asides,
    ...saved.asides,
    ...cautions.map(asSaid),
    ...slipAsides(saved.slips, placed.values, { id, test: placed.test }),
    ...gaugeAside(args, saved, record?.tests ?? []),
  ];
  const aside = saidOnce(asides.map((line) => clean(line, 2000)));
  if (errors.length > 0 || record === undefined || test === undefined) {
    const text = `${first}\n\nIt is saved, but other entries have faults, so nothing can be said of it yet.\n`;
    const json = {
      schema: "sealtrend/enter@1",
      engine: { id },
      test: { id: placed.test },
      written: entered,
      problems: errors,
    };
    return { exit: 1, text: text, json, aside: `${aside}${faultText(errors, io.width)}` };
  }
  const assessment = assessTest(record, test);
  const cautioned = saidOnce(
    [...asides, ...oilCautions(record, test), ...comparable(args, record, test)].map((line) =>
      clean(line, 2000),
    ),
  );
  const unit = pressureUnit(args.text("units"), logbook.facts, unitRead(assessment));
  const detail = args.flag("why") ? "why" : "short";
  // a screen, less what was saved and a gap
  const room = 24 - first.split("\n").length - 1;
  const lines = showScreen(assessment, { unit, width: io.width, detail, rows: room });
  const text = `${[first, "", ...lines].join("\n")}\n`;
  const json = { ...showDocument(assessment, "sealtrend/enter@1"), written: entered };
  return { exit: 0, text, json, ...(cautioned === "" ? {} : { aside: cautioned }) };
};

/** Readings by a second gauge that tell how it stands to the first, where no link says so yet. */
const comparable = (args: Args, record: EngineRecord, test: Test): readonly string[] => {
  const linked = record.gauges.filter(({ link }) => link !== undefined).map(({ id }) => id);
  const pairs = compareGauges(record, test).filter(({ gauge, to, standing }) => {
    const both = [gauge, to];
    const isNew = both.includes(args.text("gauge")) && !both.some((name) => linked.includes(name ?? ""));
    return standing.kind === "measured" && isNew;
  });
  return pairs.map(
    ({ gauge = "", to = "" }) =>
      `${gauge} and ${to} read the same cylinders; how they stand, and their years joined: sealtrend gauge compare ${record.engine.id} --test ${test.id}`,
  );
};

/** A gauge named for the first time, but nearly as a known one, is questioned once. */
const gaugeAside = (
  args: Args,
  { logbook, placed }: Saved,
  tests: readonly { readonly id: string; readonly rows: readonly { readonly gauge?: string }[] }[],
): string[] => {
  const name = args.text("gauge");
  const names = logbook.gauges.map(({ id }) => id);
  const usedBefore = tests.some(
    ({ id, rows }) => id !== placed.test && rows.some(({ gauge }) => gauge === name),
  );
  const [near] = name === undefined || names.includes(name) || usedBefore ? [] : nearest(name, names);
  return near === undefined
    ? []
    : [
        `gauge "${name ?? ""}" is not in gauges.csv; if you meant ${near}: sealtrend undo, then enter it again`,
      ];
};
