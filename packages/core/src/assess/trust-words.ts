// The reasons why a test is doubtful or void, in words, each with what to do about it.

const join = (labels: readonly string[]): string => (labels.length <= 1 ? labels.join("") : `${labels.slice(0, -1).join(", ")} and ${labels.at(-1) ?? ""}`);
const cylinder = (labels: readonly string[]): string => `cylinder${labels.length === 1 ? "" : "s"} ${join(labels)}`;
const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

export const trustWords = {
  "throttle-closed": (_: object) => ({ text: "the throttle was closed", mend: "block it wide open and test again" }),
  "release-active": (_: object) => ({
    text: "the compression release was working, the figures it is held against were taken without",
    mend: "defeat the release and test again, or do a leak-down",
  }),
  "wrong-stroke": ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `air at intake and exhaust at once in ${cylinder(cylinders)}: not at top dead centre on compression`,
    mend: "turn on to compression and repeat the leak-down there",
  }),
  "all-pegged": (_: object) => ({ text: "the needle was pegged on every cylinder", mend: "test again with a gauge of higher range" }),
  pegged: ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `the needle was pegged on ${cylinder(cylinders)}`,
    mend: "read it again with a gauge of higher range",
  }),
  "doubtful-cell": ({ cylinders }: { cylinders: readonly string[] }) => ({
    text: `the reading of ${cylinder(cylinders)} is marked doubtful`,
    mend: "take it again",
  }),
  "too-slow": ({ rpm }: { rpm: number }) => ({
    text: `cranked at ${rpm.toFixed(0)} rpm: below 100 no reading tells anything`,
    mend: "charge the battery, see to the starter, test again",
  }),
  slow: ({ rpm, reference }: { rpm: number; reference: number }) => ({
    text: `cranked at ${rpm.toFixed(0)} rpm, slow against ${reference.toFixed(0)}: all readings come out low, a leaking cylinder's most`,
    mend: "charge the battery and test again",
  }),
  cold: ({ against }: { against: string }) => ({ text: `the engine was cold: ${against}`, mend: "run it warm and test again the same day" }),
  "strokes-differ": ({ least, most }: { least: number; most: number }) => ({
    text: `strokes differ between cylinders (${String(least)} to ${String(most)})`,
    mend: "give every cylinder the same number of strokes",
  }),
  seller: (_: object) => ({ text: "it is a seller's sheet", mend: "test it yourself; no seller's sheet is a baseline" }),
  "repeats-apart": ({ apart }: { apart: readonly { readonly label: string; readonly share: number }[] }) => ({
    text: `repeats of ${cylinder(apart.map(({ label }) => label))} lie up to ${percent(Math.max(...apart.map(({ share }) => share)))} apart, more than repeats do`,
    mend: "look at seal and adapter, then read it again three times",
  }),
} as const;

export type TrustReasonCode = keyof typeof trustWords;
