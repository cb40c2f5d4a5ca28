// The last lines of `history`: what an alarm may be worth, what to measure next to know more, where the chart is.

import type { HistoryAssessment, KindHistory } from "@sealtrend/core";
import type { HistoryOptions } from "./history-after.ts";
import { type Named, alarmText } from "./history-alarm.ts";
import { isAlone } from "./history-numbers.ts";
import { planText } from "./history-plan.ts";
import { hasDropped } from "./history-sentences.ts";
import { prose } from "../prose.ts";
import { count, joined, sentence } from "../words.ts";

export const closingLines = (
  { record, leakDown }: HistoryAssessment,
  main: KindHistory,
  { width, step }: Pick<HistoryOptions, "width" | "step">,
): string[] => {
  const { id } = record.engine;
  // what was found comes first, whichever test found it
  const kind = leakDown !== undefined && !hasAlarm(main) && hasAlarm(leakDown) ? leakDown : main;
  const { result } = kind;
  const full = result.tests.filter(({ use }) => use === "full").length;
  const [worst] = result.cylinders.toSorted(
    (a, b) => b.alarms.length - a.alarms.length || Number(hasDropped(b)) - Number(hasDropped(a)),
  );
  const many =
    result.manyLooks === "yes" && hasAlarm(kind)
      ? prose("By chance alone about 1 healthy engine in 20 shows such an alarm over so many tests.", width)
      : [];
  const leak = kind === leakDown ? undefined : leakSince(main, leakDown);
  const next = nextText(kind, full, {
    id,
    ...(step === undefined ? {} : { step }),
    ...(leak === undefined ? {} : { leak }),
  });
  const chart =
    full > 1 && worst !== undefined
      ? prose(`chart of one cylinder: sealtrend history ${id} --cylinder ${worst.label}`, width)
      : [];
  return [...many, ...(next === undefined ? [] : prose(next, width, "next   ")), ...chart];
};

/** The newest leak-down that counts, where it is as new as the newest cranking test that does. */
const leakSince = (main: KindHistory, leakDown: KindHistory | undefined): string | undefined => {
  const lastOf = (kind: KindHistory | undefined): string | undefined =>
    kind?.counted.findLast(({ use }) => use === "full")?.test.date;
  const [cranked, leaked] = [lastOf(main), lastOf(leakDown)];
  return leaked !== undefined && leaked >= (cranked ?? "") ? leaked : undefined;
};

const hasAlarm = ({ result }: KindHistory): boolean =>
  result.cylinders.some(({ alarms }) => alarms.length > 0);

const nextText = (kind: KindHistory, full: number, named: Named): string | undefined => {
  const found = alarmText(kind, named);
  if (found !== undefined) return found;
  const { step, id } = named;
  const plan = courseText(kind, full);
  if (step === undefined) return plan ?? againText(kind);
  const first = `${step.text}, ${String(step.minutes)} minutes; how: sealtrend show ${id}`;
  return plan === undefined ? first : `${first}\n${sentence(plan)}`;
};

/** What the first sentence of a drop asks for, where `show` sees nothing that stands out. */
const againText = ({ result: { cylinders } }: KindHistory): string | undefined => {
  const dropped = cylinders.filter(hasDropped).map(({ label }) => label);
  if (dropped.length === 0) return undefined;
  return `read ${cylinders.length === 2 ? "both" : joined(dropped)} again, three times each`;
};

/** What more tests would tell. */
const courseText = (kind: KindHistory, full: number): string | undefined => {
  const plan = kind.result.cylinders.some(hasDropped) ? undefined : planText(kind);
  const planned = plan === undefined ? undefined : plan.text + plan.three;
  if (full >= 4) return planned;
  const wanted = full === 3 ? "one more test gives" : `${count(4 - full)} more tests give`;
  const isOften = (kind.further?.repeats ?? 1) >= 3;
  const course = `${wanted} a course${isOften ? "" : `; read ${isAlone(kind) ? "it" : "each cylinder"} three times, that tells most`}`;
  return planned === undefined ? course : `${course}. ${sentence(planned)}`;
};
