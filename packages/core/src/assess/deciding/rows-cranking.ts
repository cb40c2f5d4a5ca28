// Rows A of the ladder: what the cranking readings say, from the newest test that speaks and from the years.

import type { CylinderHistory } from "../../history/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import type { TestAssessment } from "../assessment.ts";
import { baselineOf, tellingTests, wholeFallOf } from "./baseline.ts";
import { type Deciding, renewedAfter, restsOnOf } from "./deciding.ts";
import { oilRows } from "./rows-oil.ts";
import { listed } from "../labels.ts";
import { type Row, percent, theOthers } from "./row.ts";

/** @source handbook/decision.md 2, rows A1, A2, A7, A8; A3 to A6 stand in rows-oil.ts */
export const crankingRows = (deciding: Deciding): readonly Row[] => {
  const { dry, today } = deciding;
  const years = historyRows(deciding);
  if (dry === undefined || dry.trust.voids === "all") return years;
  const renewed = renewedAfter(deciding, { date: dry.test.date, today });
  const from = `test ${dry.test.id}`;
  const restsOn = restsOnOf(deciding, dry);
  const level = years.length === 0 ? sound(deciding, dry) : [];
  const rows = [...level, ...lagging(dry), ...oilRows(dry)]
    .filter(({ cylinder }) => cylinder === undefined || !renewed.has(cylinder))
    .map((row): Row => ({ ...row, from, restsOn }));
  return [...rows, ...allLow(deciding, dry), ...years];
};

type Found = Omit<Row, "from" | "restsOn">;

/** A share of the own baseline below which a cylinder is not what it was. @source handbook/trade.md F2 (judgement) */
const baseline = 0.85;
/** From here down the bound is near. */
const nearBaseline = 0.9;
/** The engine as a whole below its baseline. @source Caterpillar SEBU6711, second hand in handbook/trade.md F1 */
const wholeFall = 0.2;

/** Clearly short of the spread rule, or not even among its fellows in two ways. */
const isLagging = ({ dryStanding }: TestAssessment["cylinders"][number]): boolean =>
  dryStanding === "lagging";

const missesSpread = ({ limitsMissed, atLimit }: TestAssessment["cylinders"][number]): boolean =>
  atLimit !== true && limitsMissed.some((limit) => limit !== "maker-minimum");

/** A1, where no cylinder stands out. Where the years show a fall, none of this is said. */
const sound = (deciding: Deciding, dry: TestAssessment): readonly Found[] => {
  const read = dry.cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  const known = read.flatMap(({ label }) => baselineOf(deciding, label, dry.test.id) ?? []);
  const [first] = known;
  if (first === undefined || known.length < read.length) return [];
  const { share: least, since } = known.reduce((a, b) => (b.share < a.share ? b : a), first);
  const standsOut = ({ dryStanding, limitsMissed }: TestAssessment["cylinders"][number]): boolean =>
    dryStanding === "lagging" || dryStanding === "suspect" || limitsMissed.length > 0;
  if (least < baseline || read.some(standsOut)) return [];
  return [{ row: "A1", text: soundText(least, since) }];
};

/** Near the bound the bound is told: `86 % of its first tests` alone would read like praise. */
const soundText = (least: number, since: string): string => {
  if (least >= 0.995) return "every cylinder reads as in its first tests, none stands out";
  return least < nearBaseline
    ? `every cylinder still above ${percent(baseline)} of its own ${since} baseline (${percent(least)} the lowest), none stands out`
    : `every cylinder at ${percent(least)} of its first tests or more, none stands out`;
};

const lagging = ({ cylinders }: TestAssessment): readonly Found[] =>
  cylinders
    .filter((one) => isLagging(one) || missesSpread(one))
    .map(({ label, belowOthers, pressures }): Found => {
      const below =
        pressures.dry?.value === 0
          ? "holds nothing"
          : belowOthers === undefined || belowOthers < 0.01
            ? "is below its limit"
            : `reads ${percent(belowOthers)} below ${theOthers(cylinders.length)}`;
      return { row: "A2", cylinder: label, text: `cylinder ${label} ${below}` };
    });

/** A7: all below the maker's minimum in two trusted tests running, or the engine 20 % below its first tests. */
const allLow = (deciding: Deciding, dry: TestAssessment): readonly Row[] => {
  const { cranking } = deciding.history;
  if (cranking === undefined) return [];
  const { tests, cylinders } = cranking.result;
  const place = tests.findIndex(({ ids }) => ids.includes(dry.test.id));
  const minimum = deciding.record.engine.compressionLimits.minimum;
  const told = tellingTests(deciding, place);
  const [now, before] = [place, told.at(-1)];
  const isBelow = (at: number): boolean => {
    const read = cylinders.flatMap(({ levels }) => levels[at] ?? []);
    return minimum !== undefined && read.length > 0 && read.every((ln) => ln < Math.log(minimum));
  };
  if (before !== undefined && isBelow(now) && isBelow(before)) {
    const text = "all cylinders below the maker's minimum in two tests running";
    return [
      { row: "A7", text, from: `tests ${idOf(tests[before]?.ids)} and ${dry.test.id}`, restsOn: "this-test" },
    ];
  }
  const fall = wholeFallOf(deciding, place);
  if (fall === undefined) return [];
  const share = Math.exp(fall.whole);
  return share > 1 - wholeFall
    ? []
    : [
        {
          row: "A7",
          text: `the engine as a whole reads ${percent(1 - share)} below ${fall.reference}`,
          from: `history to test ${dry.test.id}`,
          restsOn: "this-test",
        },
      ];
};

const idOf = (ids: readonly string[] | undefined): string => ids?.[0] ?? "";

/** One that never held anything has lost nothing that the years saw. */
const hasLost = ({ alarms, course }: Pick<CylinderHistory, "alarms" | "course">): boolean =>
  alarms.some((alarm) => alarm !== "no-compression") || (alarms.length > 0 && course === "stepped-down");

/** A8: an alarm of the years, or the engine as a whole falls. */
const historyRows = ({ history, record, today }: Deciding): readonly Row[] => {
  const { cranking } = history;
  const last = cranking?.counted.findLast(({ use }) => use === "full")?.test;
  if (cranking === undefined || last === undefined) return [];
  const renewed = renewedAfter({ record }, { date: last.date, today });
  const alarmed = cranking.result.cylinders.filter((one) => hasLost(one) && !renewed.has(one.label));
  const from = `history ${cranking.start.slice(0, 4)} to ${last.date.slice(0, 4)}`;
  const whole = cranking.result.common.word === "falling" && renewed.size === 0;
  if (alarmed.length === 0 && !whole) return [];
  const [one, ...more] = alarmed;
  return [
    {
      row: "A8",
      ...(one === undefined || more.length > 0 ? {} : { cylinder: one.label }),
      text:
        one === undefined ? "the engine as a whole falls over the years" : lostText([one, ...more], record),
      from,
      restsOn: "this-test",
    },
  ];
};

/** Of two cylinders of which nobody can tell which one moved, both ways are told. */
const lostText = (
  alarmed: readonly [CylinderHistory, ...CylinderHistory[]],
  { engine }: EngineRecord,
): string => {
  const [{ label, mirrored, alarms }] = alarmed;
  const other = engine.cylinders.find((own) => own !== label) ?? "";
  if (mirrored === "either" && alarmed.length === 1 && !alarms.includes("no-compression"))
    return `cylinder ${label} has lost against ${other} beyond chance over the years, or ${other} has gained`;
  const labels = alarmed.map((own) => own.label);
  return `cylinder${labels.length === 1 ? "" : "s"} ${listed(labels)} lost beyond chance over the years`;
};
