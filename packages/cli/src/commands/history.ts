// history: each cylinder across the years.

import {
  type EngineRecord,
  type KindHistory,
  type NextTest,
  type PressureUnit,
  type TestAssessment,
  assessHistory,
  assessTest,
  beforeOpening,
  shownTests,
} from "@sealtrend/core/parts";
import type { Command } from "../command.ts";
import { historyDocument } from "../documents/history-document.ts";
import { historyScreen } from "../render/history/history.ts";
import { pressureUnit } from "../render/units.ts";
import { pickRecord, pickTest, saidAside } from "./pick.ts";
import { theEngine } from "./the-engine.ts";
import { usage } from "./usage.ts";

type Step = Omit<NextTest, "by">;

export const history: Command = {
  name: "history",
  summary: "each cylinder across the years: steady, falling, or too short to tell",
  examples: ["sealtrend history tractor", "sealtrend history tractor --cylinder 3"],
  positionals: [theEngine],
  options: [
    { name: "cylinder", value: "3", help: "this cylinder alone, with its chart" },
    { name: "long", help: "the readings alone, one a row" },
  ],
  run: async (args, io) => {
    io.brief?.();
    const { logbook, record } = await pickRecord(args, io);
    const label = cylinderNamed(record, args.text("cylinder"));
    const assessment = assessHistory(record);
    const main = assessment.cranking ?? assessment.leakDown;
    const { width, unicode, today } = io;
    const detail = args.flag("why") ? "why" : "short";
    const unit = pressureUnit(
      args.text("units"),
      logbook.facts,
      main === undefined ? undefined : unitOfLast(main),
    );
    const upTo = args.text("as-of");
    const asked = {
      form: args.flag("long") ? "list" : "screen",
      ...(label === undefined ? {} : { cylinder: label }),
      ...(upTo === undefined ? {} : { upTo }),
    } as const;
    const newest =
      record.tests.length === 0
        ? undefined
        : assessTest(record, pickTest(record, undefined), { history: assessment });
    const step = newest === undefined ? undefined : firstStep(newest);
    const options = {
      width,
      unicode,
      today,
      unit,
      detail,
      ...(newest === undefined ? {} : { newest }),
      ...(step === undefined ? {} : { step }),
    } as const;
    // one of the two is asked for, and each takes a while at the start
    const told = args.flag("json")
      ? { text: "", json: historyDocument(assessment, step) }
      : { json: undefined, text: `${historyScreen(assessment, asked, options).join("\n")}\n` };
    return { exit: 0, ...told, ...saidAside(logbook) };
  },
};

/** What `show` names first of the newest test. */
const firstStep = (assessment: TestAssessment): Step | undefined =>
  shownTests(assessment.nextTests)[0] ?? beforeOpening(assessment);

/** @throws Stop 2 for a cylinder the engine does not have */
const cylinderNamed = ({ engine }: EngineRecord, label: string | undefined): string | undefined => {
  if (label === undefined || engine.cylinders.includes(label)) return label;
  const [first = "1"] = engine.cylinders;
  const expected = `one of: ${engine.cylinders.join(", ")}`;
  throw usage("cylinder-unknown", `${engine.id} has no cylinder "${label}"`, expected, `--cylinder ${first}`);
};

const unitOfLast = ({ counted }: KindHistory): PressureUnit | undefined => {
  const unit = counted.at(-1)?.values.unit;
  return unit === "%" ? undefined : unit;
};
