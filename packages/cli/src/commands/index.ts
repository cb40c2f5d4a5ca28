// Every command, in the order of the help.

import type { Command } from "../command.ts";

import { amend } from "./amend.ts";
import { completionOf } from "./completion.ts";
import { decide } from "./decide.ts";
import { demo } from "./demo.ts";
import { engineAdd } from "./engine-add.ts";
import { engineList } from "./engine-list.ts";
import { engineSet } from "./engine-set.ts";
import { engineShow } from "./engine-show.ts";
import { enter } from "./enter.ts";
import { expectedReading } from "./expect.ts";
import { gaugeAdd } from "./gauge-add.ts";
import { gaugeCalibrate } from "./gauge-calibrate.ts";
import { gaugeCompare } from "./gauge-compare.ts";
import { gaugeList } from "./gauge-list.ts";
import { history } from "./history.ts";
import { how } from "./how.ts";
import { manualOf } from "./manual.ts";
import { importSheet } from "./import.ts";
import { note } from "./note.ts";
import { page } from "./page.ts";
import { proofread } from "./proofread.ts";
import { restate } from "./restate.ts";
import { rules } from "./rules.ts";
import { service } from "./service.ts";
import { show } from "./show.ts";
import { teardown } from "./teardown.ts";
import { undo } from "./undo.ts";
import { yard } from "./yard.ts";

export const commands: readonly Command[] = [
  demo,
  enter,
  show,
  history,
  decide,
  yard,
  teardown,
  page,
  how,
  expectedReading,
  engineAdd,
  engineList,
  engineShow,
  engineSet,
  gaugeAdd,
  gaugeList,
  gaugeCalibrate,
  gaugeCompare,
  service,
  note,
  importSheet,
  amend,
  undo,
  proofread,
  restate,
  rules,
  completionOf(() => commands),
  manualOf(() => commands),
];
