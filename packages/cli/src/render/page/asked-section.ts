// What the shop is asked for: the work that the figures ask for, with its sizes, then all other work that can be ticked; when
// to stop and ring; what comes back.

import {
  type LengthUnit,
  type TeardownAssessment,
  type WorkCode,
  fromSi,
  type Length,
} from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { PageBlock, PageSection } from "./page-model.ts";
import { kept } from "./page-words.ts";
import { lengthUnit } from "../teardown/teardown-length.ts";
import { sentence } from "../words.ts";

/** Not for the shop: the owner's own next step. */
const own: readonly WorkCode[] = ["use-again", "measure-better", "measure-missing"];

/** All that can be asked for; left out where the figures ask for it already. */
const offered: readonly { readonly text: string; readonly unless?: readonly WorkCode[] }[] = [
  { text: "clean, and look for cracks, how: ___" },
  { text: "pressure test" },
  {
    text: "bore ___ to ___ (pistons given: yes / no, measured ___, clearance ___)",
    unless: ["bore-oversize"],
  },
  { text: "hone: finish ___, crosshatch ___°" },
  { text: "deck skim, at most ___", unless: ["skim-deck"] },
  { text: "head skim, at most ___", unless: ["skim-head"] },
  {
    text: "grind mains to ___, pins to ___ (shells given: maker's no. ___, size ___)",
    unless: ["grind-crank"],
  },
  { text: "polish journals" },
  { text: "straighten ___, balance ___", unless: ["straighten-crank"] },
  { text: "housing bores" },
  { text: "guides and seats", unless: ["guides-and-seats"] },
  { text: "cam bushings: fit new ones and bore" },
  { text: "core and gallery plugs out, new ones in" },
];

export const askedSection = ({ units }: PageInput, teardown: TeardownAssessment | undefined): PageSection => {
  const work = (teardown?.work ?? []).filter(({ code }) => !own.includes(code));
  const codes = work.map(({ code }) => code);
  const sizes = teardown === undefined ? [] : sizeTexts(teardown, units);
  const cautions = [...new Set(work.flatMap(({ caution }) => caution ?? []))];
  const first = (teardown?.work ?? []).filter(
    ({ code }) => code === "measure-better" || code === "measure-missing",
  );
  return {
    code: "asked",
    heading: "Asked for: only what is ticked",
    blocks: [
      ...(first.length === 0
        ? []
        : [
            {
              kind: "text",
              text: `Measure first: ${first.map(({ text }) => kept(text)).join("; ")}.`,
            } as const,
          ]),
      {
        kind: "ticks",
        items: [
          ...work.map(
            ({ text, labels }) =>
              ({
                text: sentence(kept(text)) + (labels.length === 0 ? "" : ` (${labels.map(kept).join(" ")})`),
                weight: "strong",
              }) as const,
          ),
          ...sizes.map((text) => ({ text, weight: "strong" }) as const),
          ...offered
            .filter(({ unless = [] }) => !unless.some((code) => codes.includes(code)))
            .map(({ text }) => ({ text })),
        ],
      },
      ...(cautions.length === 0
        ? []
        : [{ kind: "text", role: "small", text: `Care: ${cautions.join(" ")}` } as const]),
    ],
  };
};

/** Sizes in the shop's unit, the other in brackets. */
const sizeTexts = (
  { oversize, undersizes }: TeardownAssessment,
  units: string | undefined,
): readonly string[] => {
  const bores = (oversize?.answers ?? []).flatMap(({ offset, size, finished, boreTo }) => {
    if (oversize === undefined || size === undefined || finished === undefined) return [];
    const both = bothIn(lengthUnit(units, [oversize.unit]));
    const centred = offset === "none" ? ", if the bar is centred in the worn bore" : "";
    return [
      `All bores +${both(size)}: finish ${both(finished)}${boreTo === undefined ? "" : `, bore to ${both(boreTo)}`}${centred}. Pistons given: yes / no, measured ___, clearance ___`,
    ];
  });
  const journals = undersizes.flatMap(({ part, size, low, high, unit }) => {
    if (size === undefined || low === undefined || high === undefined) return [];
    const both = bothIn(lengthUnit(units, [unit]));
    return [
      `All ${part}s -${both(size)}: ${both(low)} to ${both(high)}. Shells given: maker's no. ___, size ___`,
    ];
  });
  return [...bores, ...journals];
};

const bothIn = (unit: LengthUnit): ((value: Length) => string) => {
  const isInch = unit === "in" || unit === "thou";
  const mm = (value: Length): string => `${fromSi(value, "mm").toFixed(3)} mm`;
  const inch = (value: Length): string => `${fromSi(value, "in").toFixed(4)} in`;
  return (value) => (isInch ? `${inch(value)} [${mm(value)}]` : `${mm(value)} [${inch(value)}]`);
};

/** When to ring, what never to do, what comes back. */
export const agreedBlocks: readonly PageBlock[] = [
  {
    kind: "facts",
    items: [
      {
        name: "Stop and ring before",
        value: "any cut beyond ___, any crack, any part that does not clean up, extra cost over ___",
      },
      { name: "Never", value: "blast into galleries, mix caps, cut without the pistons in hand" },
      {
        name: "Expected back",
        value:
          "the finished size of every bore and journal in the last column; marks of over- and undersize; old parts; galleries clean; surfaces oiled; the bill by line",
      },
    ],
  },
];
