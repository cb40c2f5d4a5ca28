// The screen of `gauge compare`: how one gauge stands to another, and what was read with both.

import {
  type EngineRecord,
  type GaugeLink,
  type GaugePair,
  type MeasuredStanding,
  type NewLink,
  type PressureUnit,
  type Test,
  comparedReadings,
  fromSi,
  writeNumber,
} from "@sealtrend/core/parts";
import { interactionText, refusalWords } from "./gauge-refusals.ts";
import { savedLine } from "../saved-line.ts";
import { placesRead } from "../units.ts";
import { type ColumnsRow, columns, wrapText } from "../table.ts";
import { counted, fixed, joined, percent, signedPercent, sentence } from "../words.ts";

interface Compared {
  readonly pair: GaugePair;
  readonly link: NewLink | undefined;
  /** The link of that gauge until now, where it was another. */
  readonly replaced: GaugeLink | undefined;
}

interface Facts {
  readonly record: EngineRecord;
  readonly test: Test;
  readonly compared: readonly Compared[];
  readonly undo: "possible" | "not-possible";
  /** `already`: gauges.csv says so; nothing is kept in the demo. */
  readonly kept: "kept" | "already" | "demo";
}

interface Screen {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}

export const comparisonLines = (facts: Facts, screen: Screen): readonly string[] =>
  facts.compared.flatMap((one, i) => [...(i === 0 ? [] : [""]), ...pairLines(one, facts, screen)]);

const pairLines = (one: Compared, facts: Facts, screen: Screen): readonly string[] => {
  const { pair } = one;
  const { record, test } = facts;
  const wrap = (text: string): readonly string[] => wrapText(text, Math.min(screen.width, 80));
  const { standing } = pair;
  if (standing.kind === "refused") {
    const { found, mend } = refusalWords(pair, {
      engine: record.engine.id,
      of: record.engine.cylinders.length,
      test: test.id,
    });
    return [...wrap(`${sentence(found)}: no link.`), ...wrap(mend)];
  }
  return [
    ...wrap(standingText(pair, standing)),
    ...keptLines(one, facts, screen.width),
    "",
    ...columns({
      labels: record.engine.cylinders,
      rows: rowsOf(pair, facts, screen.unit),
      width: screen.width,
    }),
    ...repeatLines(pair).flatMap(wrap),
    ...(screen.detail === "why" ? ["", ...whyLines(pair, standing).flatMap(wrap)] : []),
  ];
};

const isLeak = ({ what }: GaugePair): boolean => what === "leak-down";

/** `black reads 3.1 % higher than red (2.0 to 4.2 %), 4 cylinders.` */
const standingText = (pair: GaugePair, { factor, low, high }: MeasuredStanding): string => {
  const { gauge = "", to = "", cylinders } = pair;
  const n = `${String(cylinders.length)} cylinders`;
  if (isLeak(pair)) {
    const times = `${fixed(factor, 2)} times as large as ${to} does (${fixed(low, 2)} to ${fixed(high, 2)})`;
    return `${gauge} shows a leak ${times}, each beside its own restrictor, ${n}.`;
  }
  if (low < 1 && high > 1) {
    const between = `${signedPercent(low - 1, 1)} to ${signedPercent(high - 1, 1)} %`;
    return `No difference shown between ${gauge} and ${to}: ${gauge} ${signedPercent(factor - 1, 1)} % (${between}), ${n}.`;
  }
  const [least, most] = [Math.abs(low - 1), Math.abs(high - 1)].toSorted((a, b) => a - b);
  const range = `${fixed((least ?? 0) * 100, 1)} to ${percent(most ?? 0, 1)}`;
  return `${gauge} reads ${percent(Math.abs(factor - 1), 1)} ${factor > 1 ? "higher" : "lower"} than ${to} (${range}), ${n}.`;
};

const keptLines = (
  { link, pair, replaced }: Compared,
  { undo, kept }: Facts,
  width: number,
): readonly string[] => {
  const wrap = (text: string): readonly string[] => wrapText(text, Math.min(width, 80));
  if (kept === "demo") return wrap("Nothing is kept of it: this is the demo.");
  if (link === undefined) {
    const names = joined([pair.gauge ?? "", pair.to ?? ""]);
    return wrap(`Not kept: ${names} must both stand in gauges.csv (sealtrend gauge add NAME).`);
  }
  const { gauge, to, factor } = link;
  const divided = (by: number): string =>
    isLeak(pair) ? `its leaks / ${fixed(by, 3)}` : `its readings / ${fixed(by, 4)}`;
  const by = divided(factor);
  return kept === "already"
    ? wrap(`Kept already: ${gauge} counts as ${to} in the history, ${by}.`)
    : [
        ...savedLine(`kept  ${gauge} counts as ${to} in the history, ${by}`, undo, width).split("\n"),
        ...(replaced === undefined
          ? []
          : wrap(`In place of: as ${replaced.to}, ${divided(replaced.factor)}, compared ${replaced.date}.`)),
      ];
};

const rowsOf = (pair: GaugePair, { record, test }: Facts, unit: PressureUnit): readonly ColumnsRow[] => {
  const { gauge = "", to = "" } = pair;
  const leak = isLeak(pair);
  const places = placesRead({ test }, unit);
  const read = comparedReadings(record, test, pair).map(({ name, values, readsHigh = 0 }) => ({
    name: leak ? `lost by ${name}` : `read by ${name}`,
    unit: leak ? "%" : unit,
    cells: values.map((value) =>
      value === undefined ? undefined : leak ? fixed(value * 100, 1) : writeNumber(value, unit, places),
    ),
    tail: readsHigh === 0 || leak ? undefined : offsetTail(readsHigh, unit),
  }));
  const ratio = record.engine.cylinders.map((_, i) => pair.cylinders.find(({ place }) => place === i)?.ratio);
  const beside = leak
    ? { name: `leak ${gauge}/${to}`, unit: "x", text: (value: number) => fixed(value, 2) }
    : { name: `${gauge} against ${to}`, unit: "%", text: (value: number) => signedPercent(value - 1, 1) };
  const { name, unit: sign, text } = beside;
  const cells = ratio.map((value) => (value === undefined ? undefined : text(value)));
  return [...read, { name, unit: sign, cells }];
};

const offsetTail = (readsHigh: number, unit: PressureUnit): string =>
  `(reads ${String(Number(fromSi(Math.abs(readsHigh), unit).toPrecision(3)))} ${unit} ${readsHigh > 0 ? "high" : "low"}: put right)`;

const repeatLines = ({ repeats }: GaugePair): readonly string[] =>
  repeats.length === 0
    ? []
    : [
        `Repeats scatter ${joined(repeats.map(({ gauge = "no name", s, df }) => `${percent(s, 1)} by ${gauge} (${counted(df, "repeat")})`))}.`,
      ];

const whyLines = (pair: GaugePair, { factor, uncertainty, df }: MeasuredStanding): readonly string[] => {
  const { study } = pair;
  const what = isLeak(pair) ? "leak (effective area beside the restrictor)" : "reading";
  return [
    `Factor ${fixed(factor, 4)}: the middle of the ratios of ${what}, ± ${percent(uncertainty, 1)} (standard uncertainty; ${String(df)} degrees of freedom, six of them what is known of repeats). The range above holds in 19 of 20 cases.`,
    "A factor says nothing of a gauge that reads wrong by the same amount everywhere, and nothing far from these readings.",
    ...(study === undefined
      ? []
      : [
          `Of the scatter: repeats ${percent(study.repeats, 1)}, from gauge to gauge ${percent(study.gauges, 1)}, from cylinder to cylinder ${percent(study.parts, 1)}; ${fixed(study.steps, 1)} steps between cylinders can be told apart.`,
        ]),
    ...interactionText(pair).map((text) => `${sentence(text)}.`),
  ];
};
