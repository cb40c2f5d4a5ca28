// The years of an engine as a chart: a strip a cylinder, with the words of its course beside it.

import {
  type CylinderHistory,
  type EngineRecord,
  type KindHistory,
  type PressureUnit,
  writeNumber,
} from "@sealtrend/core";
import type { Strip, StripsBlock } from "./page-model.ts";
import { kept } from "./page-words.ts";
import { isAlone, numbersOf } from "../history/history-numbers.ts";
import { heldNothing } from "../history/history-nothing.ts";
import { dateOf, perText } from "../history/history-sentences.ts";
import { courseText } from "../history/history-table.ts";
import { cut } from "../width.ts";
import { fixed, signedPercent, theOthers } from "../words.ts";

/** A limit further off than twice the deepest reading would press every strip flat: it is named in words only. */
const nearLimit = 0.45;

export const stripsOf = (record: EngineRecord, kind: KindHistory, unit: PressureUnit): StripsBlock => {
  const { result } = kind;
  const labels = record.engine.cylinders;
  const alone = isAlone(kind);
  const names = [...new Set(result.tests.map(({ gauge }) => gauge))];
  const limit = limitOf(kind, alone, unit);
  const dates = result.tests.map((_, i) => dateOf(kind, i));
  const others = theOthers(labels.length);
  const what = kind.kind === "dry" ? "compression" : "seal in the leak-down";
  return {
    kind: "strips",
    id: kind.kind === "dry" ? "years" : "leak-years",
    caption: alone
      ? `The ${what} over the years, corrected; a dot a test.`
      : `The ${what} of each cylinder against ${others} over the years, in percent; the thin line is level with them; a mark a test.`,
    quantity: alone ? (kind.kind === "dry" ? "pressure" : "held") : "against-others",
    unit,
    tests: result.tests.map(({ use, gauge }, i) => ({
      date: dates[i] ?? "",
      gauge: names.indexOf(gauge),
      counts: use === "full" ? "yes" : isSetAside(record, result.tests[i]?.ids ?? []) ? "aside" : "no",
    })),
    gauges: names.map((name) => (name === undefined ? "gauge not named" : `gauge ${cut(kept(name), 28)}`)),
    cylinders: result.cylinders.map((cylinder) => stripFor(cylinder, kind, unit)),
    works: record.services
      .filter(({ date }) => date >= (dates[0] ?? "") && date <= (dates.at(-1) ?? ""))
      .map(({ date, what: work, cylinders: touched, newBaseline }) => ({
        date,
        text:
          touched.length === 0 || touched.length === labels.length ? work : `${work} (${touched.join(" ")})`,
        cylinders: newBaseline,
      })),
    ...(limit === undefined ? {} : { limit }),
  };
};

const isSetAside = ({ tests }: EngineRecord, ids: readonly string[]): boolean =>
  tests.some(({ id, setAside }) => setAside !== undefined && ids.includes(id));

const stripFor = (cylinder: CylinderHistory, kind: KindHistory, unit: PressureUnit): Strip => {
  const { label, ratios, levels } = cylinder;
  const alone = isAlone(kind);
  const nothing = heldNothing(cylinder, kind);
  const values = alone
    ? levels.map((ln) => (ln === undefined ? undefined : Math.exp(ln)))
    : ratios.map((ln) => (ln === undefined ? undefined : Math.expm1(ln)));
  const anew = kind.result.epochs
    .filter(({ why, cylinders }) => why !== undefined && cylinders.includes(label))
    .flatMap(({ from }) => from ?? []);
  return {
    label,
    values: values.map((value, i) => (nothing.includes(i) ? undefined : value)),
    nothing,
    anew,
    ...endsOf(cylinder, kind, unit),
    ...beforeOf(cylinder, kind, unit),
    course: courseWords(cylinder, kind, unit),
    word: courseText(cylinder, kind),
  };
};

/** As the screen of the history gives them. */
const endsOf = (cylinder: CylinderHistory, kind: KindHistory, unit: PressureUnit): Pick<Strip, "ends"> => {
  const { first, last, unit: of } = numbersOf(cylinder, kind, unit);
  return first === "-" && last === "-" ? {} : { ends: { first: first + of, last: last + of } };
};

/** `-17.8 %` before its history began anew: what was there must not be lost. */
const beforeOf = (
  cylinder: CylinderHistory,
  kind: KindHistory,
  unit: PressureUnit,
): Pick<Strip, "before"> => {
  const { since = kind.result.tests.length, ratios, levels } = cylinder;
  const isRead = (i: number): boolean => kind.result.tests[i]?.use === "full";
  const values = isAlone(kind) ? levels : ratios;
  const last = values.findLastIndex((value, i) => i < since && value !== undefined && isRead(i));
  const isAnew = kind.result.epochs.some(
    ({ why, cylinders }) => why !== undefined && cylinders.includes(cylinder.label),
  );
  if (!isAnew || last === -1) return {};
  const until = { ...cylinder, since: 0 };
  const tests = kind.result.tests.slice(0, last + 1);
  const old = numbersOf(until, { ...kind, result: { ...kind.result, tests } }, unit);
  return { before: old.last + old.unit };
};

/** `falling, -1.9 % a year (-2.2 to -1.5)`: the interval holds 19 chances in 20 or as many as few tests allow. */
const courseWords = (cylinder: CylinderHistory, kind: KindHistory, unit: PressureUnit): string => {
  const { slope } = numbersOf(cylinder, kind, unit);
  const { low, high } = cylinder.theilSen ?? {};
  const word = courseText(cylinder, kind);
  if (slope === "-") return word;
  const scale = kind.result.axis.perYear ?? 1;
  const ends =
    low === undefined || high === undefined
      ? ""
      : ` (${[low, high].map((end) => signedPercent(Math.expm1(end * scale), 1)).join(" to ")})`;
  return `${word}, ${slope} % ${perText(kind)}${ends}`;
};

const limitOf = (kind: KindHistory, alone: boolean, unit: PressureUnit): StripsBlock["limit"] => {
  const { cylinders } = kind.result;
  if (alone) {
    const [absolute] = cylinders.flatMap((one) => one.absolute ?? []);
    if (absolute === undefined) return undefined;
    const lowest = Math.min(...cylinders.flatMap(({ levels }) => levels.flatMap((ln) => ln ?? [])));
    return Math.exp(absolute.minimum) > 0.6 * Math.exp(lowest)
      ? {
          value: Math.exp(absolute.minimum),
          text: `the maker's minimum, ${writeNumber(Math.exp(absolute.minimum), unit)} ${unit}`,
        }
      : undefined;
  }
  const [ratio] = cylinders.flatMap((one) => one.limit ?? []);
  const lowest = Math.min(0, ...cylinders.flatMap(({ ratios }) => ratios.flatMap((ln) => ln ?? [])));
  if (ratio === undefined || lowest > nearLimit * Math.log(ratio.value)) return undefined;
  return {
    value: ratio.value - 1,
    text: `limit: ${ratio.value.toFixed(2)} of ${theOthers(cylinders.length)}, ${fixed((ratio.value - 1) * 100, 0)} %`,
  };
};
