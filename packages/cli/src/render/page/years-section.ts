// The years: what they show in words, then each cylinder's strip.

import type { KindHistory } from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { PageBlock, PageSection, StripsBlock } from "./page-model.ts";
import { stripsOf } from "./strips-of.ts";
import { letterOf } from "./strips-words.ts";
import { historyHeadline } from "../history/history-headline.ts";

export const yearsSection = (input: PageInput): PageSection => {
  const { cranking, leakDown } = input.history;
  const kinds = [cranking, leakDown].flatMap((kind) => kind ?? []);
  const blocks = kinds.flatMap((kind) => kindBlocks(input, kind, kinds.length > 1));
  const nothing: PageBlock = { kind: "text", text: "No test, so no course." };
  return { code: "years", heading: "Over the years", blocks: blocks.length === 0 ? [nothing] : blocks };
};

const kindBlocks = (input: PageInput, kind: KindHistory, named: boolean): readonly PageBlock[] => {
  const name = !named ? "" : kind.kind === "dry" ? "Compression: " : "Leak-down: ";
  if (kind.result.tests.length < 2)
    return [
      { kind: "text", text: `${name}${name === "" ? "One" : "one"} test only, so there is no course yet.` },
    ];
  const chart = stripsOf(input.record, kind, input.unit);
  const isDrawn = chart.cylinders.some(({ values }) => values.some((value) => value !== undefined));
  const isKeyed = isDrawn && input.form === "html";
  const works = chart.works.map(({ date, text }, i) => `${isKeyed ? `${letterOf(i)}: ` : ""}${text} ${date}`);
  return [
    { kind: "text", text: name + historyHeadline(input.history, kind).join(" ") },
    ...(isDrawn ? parted(chart) : []),
    ...(works.length === 0
      ? []
      : [{ kind: "text", role: "small", text: `Works: ${works.join("; ")}.` } as const]),
  ];
};

/** So many strips stand in one drawing, so that the end of a page need not leave half of it empty. */
const mostStrips = 14;

const parted = (chart: StripsBlock): readonly StripsBlock[] => {
  const parts = Math.ceil(chart.cylinders.length / mostStrips);
  const each = Math.ceil(chart.cylinders.length / parts);
  return Array.from({ length: parts }, (_, i): StripsBlock => {
    const cylinders = chart.cylinders.slice(i * each, (i + 1) * each);
    const [first, last] = [cylinders.at(0)?.label ?? "", cylinders.at(-1)?.label ?? ""];
    return parts === 1
      ? chart
      : {
          ...chart,
          id: `${chart.id}-${String(i + 1)}`,
          caption: i === 0 ? chart.caption : `The same of cylinders ${first} to ${last}.`,
          cylinders,
        };
  });
};
