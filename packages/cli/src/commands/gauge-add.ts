// gauge add: a row of gauges.csv.

import { join } from "node:path";
import { type Problem, gaugeHeader, nearest, newLogbookText, readGauges } from "@sealtrend/core/parts";
import { type Args, type Command, Stop } from "../command.ts";
import { gaugesDocument } from "../documents/gauges-document.ts";
import type { Io } from "../io.ts";
import { isThere } from "../logbook/inside.ts";
import { type Logbook, openLogbook } from "../logbook/open-logbook.ts";
import { shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { type Change, write } from "../logbook/write.ts";
import { typedLine } from "../options/quote.ts";
import { saidOnce } from "../render/aside.ts";
import { gaugeText } from "../render/gauges/gauges.ts";
import { savedLine } from "../render/saved-line.ts";
import { askLine, askMissing } from "./ask-missing.ts";
import { gaugeCells } from "./gauge-steps/gauge-cells.ts";
import { gaugeOptions } from "./gauge-steps/gauge-options.ts";
import { columnsNeeded, newRow } from "./new-row.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { checkTexts } from "./typed/typed-text.ts";
import { usage } from "./usage.ts";

export const gaugeAdd: Command = {
  name: "gauge add",
  summary: "describe a gauge or leak-down tester, once",
  examples: [
    "sealtrend gauge add red --kind compression --unit psi --full-scale 300psi --class 2.5",
    "sealtrend gauge add tester --kind leak-down --full-scale 100psi --regulated 80psi --restrictor 0.040in",
  ],
  enters: true,
  positionals: [{ name: "NAME", help: "what you call it, as in --gauge red", need: "must" }],
  options: gaugeOptions,
  run: async (typed, io) => {
    const [name = ""] = typed.positionals;
    const world = nodeWorld(io);
    const logbook = await openLogbook(world, "write", typed.text("logbook"));
    refuseDemo(logbook);
    checkName(name, logbook);
    const near = await nearName(name, logbook, io);
    const args = await askMissing(typed, io, [
      {
        option: "kind",
        question: "what it measures: compression or leak-down: ",
        found: `what does ${name} measure?`,
        mend: `sealtrend gauge add ${name} --kind compression --unit psi`,
      },
    ]);
    checkTexts(args, ["note"]);
    const { cells, faults } = gaugeCells(name, args);
    if (faults.length > 0) throw new Stop(2, faults);
    const file = shown(io.cwd, join(logbook.root, "gauges.csv"));
    const changes: Change[] = [
      ...(isThere(world, join(logbook.root, "logbook.json"))
        ? []
        : [{ kind: "create", path: "logbook.json", text: newLogbookText() } as const]),
      {
        kind: "append",
        path: "gauges.csv",
        header: gaugeHeader,
        needs: (text) => columnsNeeded(text, { file, values: cells, read }),
        rows: (current) => newRow(current?.text ?? "", { file, header: gaugeHeader, values: cells, read }),
      },
    ];
    const command = typedLine(["gauge", "add", name, ...givenWords(args)]);
    const written = await write(world, { root: logbook.root, command, changes });
    const now = await openLogbook(world, "write", typed.text("logbook") ?? logbook.root);
    const added = now.gauges.filter(({ id }) => id === name);
    const where = logbook.place.state === "new" ? [`your logbook is ${logbook.root}`] : [];
    const aside = saidOnce([...where, ...logbook.asides, ...written.asides, ...near]);
    return {
      exit: 0,
      text: `${savedLine(`added  gauge ${name}: ${added.map(gaugeText).join("")}`, written.undo, io.width)}\n`,
      json: gaugesDocument(now.root, added, { file, rows: 1 }),
      ...(aside === "" ? {} : { aside }),
    };
  },
};

const read = (text: string, file: string): readonly Problem[] => readGauges(text, file).problems;

const checkName = (name: string, { gauges, root, world }: Logbook): void => {
  if (!/^\p{L}[\p{L}\p{N} ._-]{0,39}$/u.test(name))
    throw usage(
      "gauge-name",
      `"${name}" cannot be the name of a gauge`,
      "1 to 40 letters, digits, spaces, . _ or -, a letter first",
      "choose a name such as red",
    );
  if (gauges.some(({ id }) => id === name))
    throw usage(
      "gauge-taken",
      `there is already a gauge "${name}" in ${shown(world.cwd, root)}`,
      "a new name",
      "sealtrend gauge list",
    );
};

/** A name near one that is there is questioned once. @returns what to say where nobody can be asked */
const nearName = async (name: string, { gauges }: Logbook, io: Io): Promise<readonly string[]> => {
  const [near] = nearest(
    name,
    gauges.map(({ id }) => id),
  );
  if (near === undefined) return [];
  if (!io.interactive)
    return [`${name} is named nearly like ${near}, which is there already; if they are one: sealtrend undo`];
  const answer = await askLine(io, `${near} is there already: is ${name} another gauge? (yes or no) `);
  if (/^y/i.test(answer)) return [];
  throw usage("gauge-near", "nothing was saved", "a gauge that is not there yet", "sealtrend gauge list");
};

const givenWords = (args: Args): readonly string[] =>
  gaugeOptions.flatMap(({ name }) => {
    const value = args.text(name);
    return value === undefined ? [] : [`--${name}`, value];
  });
