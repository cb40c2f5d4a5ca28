// The years: what they show in words, then each cylinder's strip.

import type { KindHistory } from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { PageBlock, PageSection } from "./page-model.ts";
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
  const works = chart.works.map(({ date, text }, i) => `${letterOf(i)} ${text} ${date}`);
  return [
    { kind: "text", text: name + historyHeadline(input.history, kind).join(" ") },
    ...(isDrawn ? [chart] : []),
    ...(works.length === 0
      ? []
      : [{ kind: "text", role: "small", text: `Works: ${works.join("; ")}.` } as const]),
  ];
};
