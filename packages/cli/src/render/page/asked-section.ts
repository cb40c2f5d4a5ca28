// What the shop is asked for: the work that the figures ask for, with its sizes, then all other work that can be ticked; when
// to stop and ring; what comes back.

import {
  type Length,
  type LengthUnit,
  type TeardownAssessment,
  type WorkCode,
  fromSi,
} from "@sealtrend/core/parts";
import type { PageInput } from "./page-input.ts";
import type { PageBlock, PageSection } from "./page-model.ts";
import { kept } from "./page-words.ts";
import { workText } from "./work-text.ts";
import { lengthUnit } from "../teardown/teardown-length.ts";

/** Before any work. */
const first: readonly WorkCode[] = ["measure-again", "measure-better", "measure-missing"];
/** Not for the shop: the owner's own next step. */
const own: readonly WorkCode[] = ["use-again", ...first];
/** Told by its sizes, where there are any. */
const sized: readonly WorkCode[] = ["bore-oversize", "grind-crank"];

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
  const told = work.filter(({ code }) => !sized.includes(code) || sizes.every((one) => one.code !== code));
  const cautions = [...new Set(work.flatMap(({ caution }) => caution ?? []))];
  const before = (teardown?.work ?? []).filter(({ code }) => first.includes(code));
  const steps = teardown === undefined ? [] : [...new Set(before.map((line) => workText(line, teardown)))];
  const asked = teardown === undefined ? [] : told.map((line) => workText(line, teardown));
  return {
    code: "asked",
    heading: "Asked for: only what is ticked",
    blocks: [
      ...(steps.length === 0
        ? []
        : [{ kind: "text", text: "Measure first:" } as const, { kind: "list", items: steps } as const]),
      {
        kind: "ticks",
        items: [
          ...asked.map((text) => ({ text, weight: "strong" }) as const),
          ...sizes.map(({ text }) => ({ text, weight: "strong" }) as const),
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

interface Sized {
  readonly code: WorkCode;
  readonly text: string;
}

/** Sizes in the shop's unit, the other in brackets. */
const sizeTexts = (
  { oversize, undersizes, work }: TeardownAssessment,
  units: string | undefined,
): readonly Sized[] => {
  const isAsked = (code: WorkCode): boolean => work.some((line) => line.code === code);
  const bores = (oversize?.answers ?? []).flatMap(
    ({ offset, size, finished, boreTo }, i): readonly Sized[] => {
      if (oversize === undefined || size === undefined || finished === undefined) return [];
      const both = bothIn(lengthUnit(units, [oversize.unit]));
      const centred = offset === "none" ? " if the bar is centred in the worn bore" : "";
      const cut = boreTo === undefined ? "" : `, bore to ${both(boreTo)}`;
      return [
        {
          code: "bore-oversize",
          text: `${i > 0 ? "Or: all" : "All"} bores +${both(size)}${centred}: finish ${both(finished)}${cut}. Measure the new pistons before boring; given: yes / no, measured ___, clearance ___`,
        },
      ];
    },
  );
  const journals = undersizes.flatMap(({ part, size, low, high, unit, decidedBy }): readonly Sized[] => {
    if (size === undefined || low === undefined || high === undefined) return [];
    const both = bothIn(lengthUnit(units, [unit]));
    return [
      {
        code: "grind-crank",
        text: `All ${part}s -${both(size)}, by ${decidedBy.includes(part) ? kept(decidedBy) : `${part} ${kept(decidedBy)}`}: ${both(low)} to ${both(high)}, fillets as they were. Shells given: maker's no. ___, size ___`,
      },
    ];
  });
  const isWhole = undersizes.every(({ size }) => size !== undefined);
  const crank = isWhole && journals.length > 0 && isAsked("grind-crank");
  return [
    ...(isAsked("bore-oversize") ? bores : []),
    ...(crank
      ? [
          {
            code: "grind-crank",
            text: "Look for cracks in the crank before any grinding is paid for",
          } as const,
          ...journals,
        ]
      : []),
  ];
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
          "the finished size of every bore and journal in the rows or columns so named; marks of over- and undersize; old parts; galleries clean; surfaces oiled; the bill by line",
      },
    ],
  },
];
