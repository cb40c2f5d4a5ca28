// What several commands begin with: the logbook, the engine, the test that is meant.

import { exampleDry } from "./example-readings.ts";
import { type EngineRecord, type Test, datedAhead, latestTest, nearest } from "@sealtrend/core/parts";
import { type Args, type Fault, Stop } from "../command.ts";
import type { Io } from "../io.ts";
import { type Logbook, openLogbook, pickEngine, readRecord } from "../logbook/open-logbook.ts";
import { recordAsOf } from "../logbook/record-as-of.ts";
import { asSaid } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { saidOnce } from "../render/aside.ts";

export interface Picked {
  readonly logbook: Logbook;
  readonly record: EngineRecord;
}

/** Opens the logbook to read and reads the engine named on the command line, or the only one. */
export const pickRecord = async (args: Args, io: Io): Promise<Picked> => {
  const logbook = await openLogbook(nodeWorld(io), "read", args.text("logbook"));
  const [named] = args.positionals;
  const cautions: Fault[] = [];
  const record = recordAsOf(readRecord(logbook, pickEngine(logbook, named), cautions), args.text("as-of"));
  const asides = [...logbook.asides, ...cautions.map(asSaid), ...daysAhead(record, io.today)];
  return { logbook: { ...logbook, asides }, record };
};

/** What is dated after today, which a slip of the pen does: it is read all the same. */
const daysAhead = (record: EngineRecord, today: string): readonly string[] => {
  const ahead = datedAhead(record, today);
  if (ahead.length === 0) return [];
  return [
    `dated after today (${today}): ${ahead.slice(0, 3).join(", ")}${ahead.length > 3 ? " …" : ""}; see each: sealtrend proofread ${record.engine.id}`,
  ];
};

/** The test named, or the latest that is not set aside and holds readings.
 *  @throws Stop 2 for a name that is not there, 1 when the engine has no test */
export const pickTest = (record: EngineRecord, named: string | undefined): Test => {
  const { engine, tests } = record;
  if (named !== undefined && named !== "latest") {
    const found = tests.find(({ id }) => id === named);
    if (found !== undefined) return found;
    const [near] = nearest(
      named,
      tests.map(({ id }) => id),
    );
    const mend =
      tests.length === 0
        ? `sealtrend enter ${engine.id}`
        : near === undefined
          ? `one of: ${tests
              .slice(-5)
              .map(({ id }) => id)
              .join(", ")}`
          : `did you mean ${near}?`;
    throw new Stop(2, [
      {
        code: "test-unknown",
        severity: "error",
        found: `${engine.id} has no test "${named}"`,
        expected: "the name of a test",
        mend,
      },
    ]);
  }
  const latest = latestTest(record);
  if (latest !== undefined) return latest;
  const mend = `sealtrend enter ${engine.id} ${exampleDry(engine)}`;
  throw new Stop(1, [
    {
      code: "test-none",
      severity: "error",
      found: `${engine.id} has no test yet`,
      expected: "at least one test",
      mend,
    },
  ]);
};

export const saidAside = ({ asides }: Logbook): { readonly aside?: string } =>
  asides.length === 0 ? {} : { aside: saidOnce(asides) };
