// amend: mends one entry of tests.csv with a reason, which is kept in amendments.csv.

import { type EngineRecord, amendmentColumns, assessTest, readEngineRecord } from "@sealtrend/core/parts";
import { type Answer, type Args, type Command, Stop } from "../command.ts";
import { amendDocument } from "../documents/amend-document.ts";
import type { Io } from "../io.ts";
import { columnsAdded } from "../logbook/add-columns.ts";
import { type Logbook, engineFiles } from "../logbook/open-logbook.ts";
import { readFileIfThere } from "../logbook/read-file.ts";
import { shown } from "../logbook/words.ts";
import { type Written, write } from "../logbook/write.ts";
import { amendLines } from "../render/amend.ts";
import { saidOnce } from "../render/aside.ts";
import { faultText } from "../render/faults.ts";
import { exampleDry } from "./example-readings.ts";
import { amendOptions } from "./amend-steps/amend-options.ts";
import { type AmendPlan, amendPlan, traceRows } from "./amend-steps/amend-plan.ts";
import { theEngine } from "./the-engine.ts";
import { typedDay } from "./typed/typed-day.ts";
import { checkTexts } from "./typed/typed-text.ts";
import { typedWords } from "./typed/typed-words.ts";
import { usage, usageFault } from "./usage.ts";
import { writableEngine } from "./writable-engine.ts";

export const amend: Command = {
  name: "amend",
  summary: "mend one entry, with a reason that is kept",
  examples: [
    'sealtrend amend tractor --test latest --what dry --take 1 --cylinder 4 --to 129 --because "paper says 129"',
    'sealtrend amend boat --test 2025-05-10a --altitude 350m --because "was left out"',
    'sealtrend amend boat --test latest --set-aside "wrong adapter"',
  ],
  enters: true,
  positionals: [theEngine],
  options: amendOptions,
  run: async (args, io) => {
    const { logbook, id, engine } = await writableEngine(args, io);
    const because = reason(args, id);
    typedDay(args, io, "the test");
    const { world, root } = logbook;
    const at = (name: string): string => shown(world.cwd, `${root}/${id}/${name}`);
    const scene = { args, logbook, engine, file: at("tests.csv") };
    if (readFileIfThere(world, `${root}/${id}/tests.csv`) === undefined)
      throw new Stop(1, [
        usageFault(
          "test-none",
          `${id} has no test yet`,
          "at least one test",
          `sealtrend enter ${id} ${exampleDry(engine)}`,
        ),
      ]);
    const command = typedWords(args, "amend", id, amendOptions);
    const made: { plan?: AmendPlan } = {};
    const planned = (text: string): AmendPlan => (made.plan = amendPlan(text, scene));
    const trace = { when: io.now(), because, file: at("amendments.csv") };
    const written = await write(world, {
      root,
      command,
      unsaved: command,
      changes: [
        { kind: "replace", path: `${id}/tests.csv`, text: (current) => planned(current.text).text },
        {
          kind: "append",
          path: `${id}/amendments.csv`,
          header: amendmentColumns.join(","),
          needs: () => amendmentColumns,
          rows: (current) => traceRows(current?.text ?? "", made.plan?.amendments ?? [], trace),
        },
      ],
    });
    if (made.plan === undefined) throw new TypeError("amend: written without a plan");
    return answer(args, io, { logbook, id, plan: made.plan, because, written, file: scene.file });
  },
};

const factOptions = amendOptions.filter(({ group }) => group?.startsWith("Facts") === true);

/** Why it is amended. @throws Stop 2 where nothing is to be amended, or no reason is given */
const reason = (args: Args, id: string): string => {
  const given = factOptions.filter(({ name }) => args.text(name) !== undefined).map(({ name }) => name);
  const cell = (args.text("cylinder") ?? args.text("to")) !== undefined;
  if (given.length === 0 && !cell)
    throw usage(
      "amend-nothing",
      "nothing to amend",
      "a cell (--cylinder and --to) or a fact of the test (--date, --altitude …)",
      amend.examples[0]?.replace(/^(sealtrend amend) \S+/, `$1 ${id}`) ?? "",
    );
  checkTexts(args, ["because", "by", "note", "set-aside", "gauge"]);
  const because = args.text("because");
  if (because !== undefined) return because;
  const aside = args.text("set-aside")?.trim();
  if (aside !== undefined && given.length === 1 && !cell)
    return aside === "-" ? "no longer set aside" : aside;
  throw usage(
    "because-missing",
    "why is it amended?",
    "--because with the reason; it is kept beside the entry",
    'add --because "paper says 141"',
  );
};

interface Amended {
  readonly logbook: Logbook;
  readonly id: string;
  readonly plan: AmendPlan;
  readonly because: string;
  readonly written: Written;
  readonly file: string;
}

const answer = (args: Args, io: Io, { logbook, id, plan, because, written, file }: Amended): Answer => {
  const added = plan.added.length === 0 ? [] : [columnsAdded(file, plan.added)];
  const aside = saidOnce([...logbook.asides, ...written.asides, ...added]);
  const { record, problems } = readEngineRecord(engineFiles(logbook, id), logbook.gauges, logbook.facts);
  const errors = problems.filter(({ severity }) => severity === "error");
  const found = errors.length > 0 ? undefined : testIn(record, plan.test);
  const assessment = record === undefined || found === undefined ? undefined : assessTest(record, found);
  const lines = amendLines(
    { id, plan, because, undo: written.undo, assessment, keepsName: args.text("date") !== undefined },
    io.width,
  );
  return {
    exit: errors.length > 0 ? 1 : 0,
    text: `${lines.join("\n")}\n`,
    json: amendDocument({ id, plan, because, file, assessment, problems: errors }),
    ...(aside === "" && errors.length === 0 ? {} : { aside: aside + faultText(errors, io.width) }),
  };
};

const testIn = (record: EngineRecord | undefined, test: string) =>
  record?.tests.find(({ id }) => id === test);
