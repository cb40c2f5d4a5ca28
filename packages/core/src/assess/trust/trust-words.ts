// The reasons why a test is doubtful or void, in words, each with what to do about it. They go on in a sentence, so they
// begin small.

const join = (labels: readonly string[]): string =>
  labels.length <= 1 ? labels.join("") : `${labels.slice(0, -1).join(", ")} and ${labels.at(-1) ?? ""}`;
const cylinder = (labels: readonly string[]): string =>
  `cylinder${labels.length === 1 ? "" : "s"} ${join(labels)}`;
const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

const engineNames = { spark: "a spark engine", compression: "a diesel", unknown: "any engine" } as const;

interface SlipFacts {
  readonly readings: readonly { readonly typed: string; readonly label: string }[];
  readonly kind: "high" | "low";
  /** The largest of them against the middle of the others. */
  readonly times: number;
  /** How many other cylinders were read. */
  readonly others: number;
}

interface SlowFacts {
  readonly rpm: string;
  /** [rpm] */
  readonly reference: number;
  /** The speed of this engine, or the least of all makers where that is not known or lower. */
  readonly heldAgainst: "this-engine" | "least-of-makers";
  /** Empty for all of them. */
  readonly cylinders: readonly string[];
}

/** About ten is ten: that is the slip. */
const timesText = (times: number): string => (times > 8.5 && times < 11.5 ? "ten" : times.toFixed(0));

export const trustWords = {
  "throttle-closed": () => ({
    text: "the throttle was closed",
    mend: "block it wide open and test again",
  }),
  "release-active": () => ({
    text: "the compression release was working, but the figures it is held against are without it",
    mend: "defeat the release and test again, or do a leak-down",
  }),
  "wrong-stroke": ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `air was heard at intake and exhaust at once in ${cylinder(cylinders)}, so the piston was not at top dead centre on compression`,
    mend: `turn ${cylinder(cylinders)} on to compression and repeat the leak-down there`,
  }),
  "all-pegged": ({ cylinders, of }: { cylinders: readonly string[]; of: number }) => ({
    text: `the needle was pegged on ${cylinders.length === of ? "every cylinder" : `${cylinder(cylinders)}, all that ${cylinders.length === 1 ? "was" : "were"} read`}`,
    mend: "test again with a gauge of higher range",
  }),
  pegged: ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `the needle was pegged on ${cylinder(cylinders)}`,
    mend: `read ${cylinders.length === 1 ? "it" : "them"} again with a gauge of higher range`,
  }),
  "set-aside": ({ reason }: { reason: string }) => ({
    text: `it is set aside: ${reason}`,
    mend: "make the test again",
  }),
  slip: ({ readings, kind, times, others }: SlipFacts) => ({
    text: `${join(readings.map(({ typed, label }) => `${typed} of cylinder ${label}`))} ${readings.length === 1 ? "is" : "are"} ${kind === "low" ? "a tenth of" : `${timesText(times)} times`} ${others === 1 ? "the other" : "the others"}: a slip of a digit?`,
    mend: "look at the gauge or the sheet again, and amend what was mistyped",
  }),
  "beyond-engine": ({
    typed,
    label,
    ignition,
  }: {
    typed: string;
    label: string;
    ignition: "spark" | "compression" | "unknown";
  }) => ({
    text: `${typed} of cylinder ${label} is more than ${engineNames[ignition]} makes: a wrong unit, or a slip of a digit?`,
    mend: "look at the unit of the gauge, and amend what was mistyped",
  }),
  "below-engine": ({ typed, label }: { typed: string; label: string }) => ({
    text: `${typed} of cylinder ${label} is the most that was read, and no engine starts with so little: a wrong unit, or a gauge that does not seal?`,
    mend: "look at the unit and the seal of the gauge, and amend what was mistyped",
  }),
  "dials-disagree": ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `the gauges disagree: in ${cylinder(cylinders)} the cylinder side reads above its supply`,
    mend: "shut the tester's valve and see whether both dials show the same",
  }),
  "doubtful-cell": ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `the reading${cylinders.length === 1 ? "" : "s"} of ${cylinder(cylinders)} ${cylinders.length === 1 ? "is" : "are"} marked doubtful`,
    mend: `take ${cylinders.length === 1 ? "it" : "them"} again`,
  }),
  "too-slow": ({ rpm }: { rpm: number }) => ({
    text: `cranked at ${rpm.toFixed(0)} rpm, and below 100 no reading tells anything`,
    mend: "charge the battery, see to the starter, test again",
  }),
  slow: ({ rpm, reference, heldAgainst, cylinders }: SlowFacts) => {
    const against =
      heldAgainst === "this-engine"
        ? `slow against ${reference.toFixed(0)}`
        : `below ${reference.toFixed(0)}, the least that any maker we read allows`;
    const [were, their] =
      cylinders.length === 1 ? ["was", "its reading comes"] : ["were", "their readings come"];
    return {
      text:
        cylinders.length === 0
          ? `cranked at ${rpm} rpm, ${against}: every reading comes out low, a leaking cylinder's most`
          : `${cylinder(cylinders)} ${were} cranked at ${rpm} rpm, ${against}: ${their} out low`,
      mend: "charge the battery and test again",
    };
  },
  cold: ({ against }: { against: "other-tests" | "makers-figures" }) => ({
    text:
      against === "other-tests"
        ? "the engine was cold, other tests of it were warm"
        : "the engine was cold; the maker's figures are for a warm one unless the manual says cold",
    mend: "run it warm and test again",
  }),
  "strokes-differ": ({ least, most }: { least: number; most: number }) => ({
    text: `strokes differ between cylinders (${String(least)} to ${String(most)})`,
    mend: "give every cylinder the same number of strokes",
  }),
  seller: () => ({
    text: "it is the seller's sheet",
    mend: "test it yourself: a seller's sheet is no baseline",
  }),
  "repeats-apart": ({ apart }: { apart: readonly { readonly label: string; readonly share: number }[] }) => ({
    text: `the repeats of ${cylinder(apart.map(({ label }) => label))} lie up to ${percent(Math.max(...apart.map(({ share }) => share)))} apart, more than repeats do`,
    mend: "look at the seal and the adapter of the gauge, then read again three times",
  }),
  "leak-repeats-apart": ({
    apart,
  }: {
    apart: readonly { readonly label: string; readonly takes: readonly number[] }[];
  }) => ({
    text: `the leak-down takes of ${apart.map(({ label, takes }) => `cylinder ${label} lost ${join(takes.map((lost) => String(Number((lost * 100).toFixed(1)))))} %`).join(", of ")}, further apart than takes of one hour lie`,
    mend: "hold the crank at top dead centre, rock it a little, set the supply again and read three times",
  }),
  "first-above-last": ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `the first stroke of ${cylinder(cylinders)} reads above the last: the two mixed up, or a check valve that leaks`,
    mend: `read ${cylinders.length === 1 ? "it" : "them"} again, first stroke and last`,
  }),
  "too-much-oil": ({ labels, oil, share }: { labels: readonly string[]; oil: string; share: number }) => ({
    text: `${oil} of oil filled ${percent(share)} of the chamber of ${cylinder(labels.slice(0, 1))}${labels.length > 1 ? `, and more than half of ${join(labels.slice(1))} too` : ""}: its reading with oil tells nothing of the rings`,
    mend: "turn it by hand, plugs out, until the oil is out; then less oil",
  }),
} as const;

/** The reasons why a test may be doubtful or void, by name. */
export type TrustReasonCode = keyof typeof trustWords;
