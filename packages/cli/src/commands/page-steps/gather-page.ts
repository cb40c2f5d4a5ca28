// Everything that a page is made from, assessed once, and the page made of it.

import {
  type EngineRecord,
  type HistoryAssessment,
  type TestAssessment,
  assessDecision,
  assessHistory,
  assessTest,
} from "@sealtrend/core";
import type { Args, Fault } from "../../command.ts";
import type { Io } from "../../io.ts";
import { engineOverview, flatFields } from "../../logbook/engine-overview.ts";
import type { Logbook } from "../../logbook/open-logbook.ts";
import { asSaid } from "../../logbook/words.ts";
import { buyerPage } from "../../render/page/buyer-page.ts";
import { filePage } from "../../render/page/file-page.ts";
import type { PageInput } from "../../render/page/page-input.ts";
import type { Page } from "../../render/page/page-model.ts";
import { shopPage } from "../../render/page/shop-page.ts";
import { typedValue } from "../../render/typed-value.ts";
import { pressureUnit, unitRead } from "../../render/units.ts";
import { pageTeardown } from "./page-teardown.ts";
import type { Purpose } from "./purpose.ts";
import { readAmendments } from "./read-amendments.ts";

export interface Gathered {
  readonly page: Page;
  readonly cautions: readonly string[];
}

export const gatherPage = (
  args: Args,
  { today }: Pick<Io, "today">,
  {
    logbook,
    record,
    purpose,
    form,
  }: {
    readonly logbook: Logbook;
    readonly record: EngineRecord;
    readonly purpose: Purpose;
    readonly form: PageInput["form"];
  },
): Gathered => {
  const cautions: Fault[] = [];
  const amendments = readAmendments(logbook, record.engine.id, args.text("as-of"), cautions);
  const history = assessHistory(record);
  const newest = newestOf(history, purpose);
  const units = args.text("units");
  const teardown = pageTeardown(args, record);
  const input: PageInput = {
    record,
    data: logbook.facts.demo ? "invented" : "real",
    dated: args.text("as-of") === undefined ? `printed ${today}` : `as of ${today}`,
    today,
    reader: purpose === "file" ? "owner" : "others",
    form,
    unit: pressureUnit(units, logbook.facts, newest === undefined ? undefined : unitRead(newest)),
    ...(units === undefined ? {} : { units }),
    history,
    ...(newest === undefined ? {} : { newest }),
    amendments,
    ...(teardown === undefined ? {} : { teardown }),
    ...(purpose === "file" ? forOwnFile(logbook, record, today) : {}),
    notes: purpose === "file" || args.flag("with-notes") ? "shown" : "left-out",
  };
  return {
    page: { shop: shopPage, buyer: buyerPage, file: filePage }[purpose](input),
    cautions: [...cautions.map(asSaid), ...otherTimes(teardown)],
  };
};

const otherTimes = (teardown: PageInput["teardown"]): readonly string[] =>
  teardown === undefined || teardown.others.length === 0
    ? []
    : [
        `this page tells of teardown ${String(teardown.now.teardown)}; for another: ${teardown.others.map((one) => `--teardown ${String(one.teardown)}`).join(" or ")}`,
      ];

const forOwnFile = (
  logbook: Logbook,
  record: EngineRecord,
  today: string,
): Pick<PageInput, "decision" | "fields"> => ({
  decision: assessDecision(record, { today, prices: [] }),
  fields: flatFields(engineOverview(logbook, record.engine.id).fields).map(([name, value]) => ({
    name,
    value: typedValue(value),
  })),
});

/** The latest that is not set aside and holds readings. Causes are for the own file alone. */
const newestOf = (history: HistoryAssessment, purpose: Purpose): TestAssessment | undefined => {
  const { record } = history;
  const test = record.tests.findLast(({ setAside, rows }) => setAside === undefined && rows.length > 0);
  return test === undefined
    ? undefined
    : assessTest(record, test, purpose === "file" ? { history } : { causes: "left-out" });
};
