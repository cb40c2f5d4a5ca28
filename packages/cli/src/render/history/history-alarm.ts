// What to do next where a cylinder alarms, or the engine as a whole falls: one line, and the step that `show` names unless the
// alarm itself asks for one. What is behind it, and how it is done, is for `show`.

import type { CylinderHistory, KindHistory, NextTest } from "@sealtrend/core";
import { isEither, isMirror } from "./history-headline.ts";
import { isAlone } from "./history-numbers.ts";
import { joined } from "../words.ts";

/** More cylinders than these are read all. */
const mostNamed = 3;

export interface Named {
  /** Of the engine. */
  readonly id: string;
  /** What `show` names first of the newest test: all screens name the same. */
  readonly step?: Pick<NextTest, "text" | "minutes">;
  /** Date of the newest leak-down, where it is as new as the cranking test. */
  readonly leak?: string;
}

/** @returns undefined where nothing was found */
export const alarmText = (kind: KindHistory, { id, step, leak }: Named): string | undefined => {
  const { cylinders, common } = kind.result;
  const causes = `what it may be: sealtrend show ${id}`;
  const alarmed = cylinders.filter((one) => one.alarms.length > 0 && !isMirror(one, kind));
  if (alarmed.length === 0)
    return common.word === "falling" && !isAlone(kind) ? wholeText(kind, id, leak) : undefined;
  const dead = alarmed.filter(({ alarms }) => alarms.includes("no-compression"));
  if (dead.length > 0) return `read ${whichText(dead, kind)} again, adapter checked; ${causes}`;
  if (isAlone(kind)) return wholeText(kind, id, leak);
  if (alarmed.some(isEither))
    return kind.kind === "dry" && !alarmed.some(({ cameBack }) => cameBack !== undefined)
      ? `leak-down of both tells which: it reads each by itself; how: sealtrend how leak-down ${id}`
      : `read both again, three times each; ${causes}`;
  if (step !== undefined)
    return `${step.text}, ${String(step.minutes)} minutes; how, and what it may be: sealtrend show ${id}`;
  if (alarmed.every(({ shape }) => shape?.seenIn === "last-reading-only"))
    return `read ${whichText(alarmed, kind)} again on another day, three times, before you believe it`;
  if (kind.kind !== "dry") return `listen where the air of ${whichText(alarmed, kind)} goes; ${causes}`;
  const control = cylinders.find(
    (one) => !alarmed.includes(one) && (one.course === "steady" || isMirror(one, kind)),
  );
  const beside = control === undefined || alarmed.length > mostNamed ? "" : `, ${control.label} as control`;
  return `read ${whichText(alarmed, kind)} three times${beside}; ${causes}`;
};

const whichText = (cylinders: readonly CylinderHistory[], kind: KindHistory): string => {
  if (isAlone(kind)) return "it";
  return cylinders.length > mostNamed ? "every cylinder" : joined(cylinders.map(({ label }) => label));
};

/** What tells wear of all alike from a tired starter: a test for which nothing is cranked. */
const wholeText = (kind: KindHistory, id: string, leak: string | undefined): string =>
  leak !== undefined
    ? `what the leak-down of ${leak} says, which a slow starter does not touch: sealtrend show ${id}`
    : kind.kind === "dry"
      ? `leak-down: a slow starter does not touch it (sealtrend how leak-down ${id})`
      : `listen where the air goes (sealtrend how leak-down ${id})`;
