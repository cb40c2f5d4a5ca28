// Sentences for figures of one gauge that do not go together.

type Said = Readonly<Record<"found" | "expected" | "mend", string>>;

/** Why known holes cannot all be right. */
export interface HolesFault {
  readonly why:
    "twice" | "mixed" | "larger-lost-less" | "nothing" | "all" | "supply" | "over-scale" | "percent-dial";
  /** As written, `1.0mm:55psi`; the smaller of two. */
  readonly hole: string;
  /** The larger one, or the pressure it is held against. */
  readonly other?: string;
}

const readAgain =
  "check the figures; else read again, with the holes clean, the hose tight and the supply as set";

export const holesWords: Readonly<Record<HolesFault["why"], (hole: string, other: string) => Said>> = {
  twice: (hole, other) => ({
    found: `${hole} and ${other} are the same hole`,
    expected: "each hole once",
    mend: "keep the reading that can be trusted, and delete the other",
  }),
  mixed: (hole, other) => ({
    found: `${hole} and ${other}: one in percent, one in pressure`,
    expected: "all holes of a tester in pressure, or all in percent",
    mend: "write all as the dial shows them",
  }),
  "larger-lost-less": (hole, other) => ({
    found: `${hole} and ${other} do not go together: the larger hole lost no more`,
    expected: "a larger hole loses more: a lower pressure, more percent lost",
    mend: readAgain,
  }),
  nothing: (hole) => ({
    found: `${hole} lost nothing`,
    expected: "an open hole, which loses some of the air and not all of it",
    mend: readAgain,
  }),
  all: (hole) => ({
    found: `${hole} lost all`,
    expected: "an open hole, which loses some of the air and not all of it",
    mend: readAgain,
  }),
  supply: (hole, supply) => ({
    found: `${hole} does not lie below the supply of ${supply}`,
    expected: "a reading below what the tester is set to: an open hole loses some of the air",
    mend: "check the reading, its unit and the supply",
  }),
  "over-scale": (hole, scale) => ({
    found: `${hole} is more than the dial can show (${scale})`,
    expected: "a reading within the dial",
    mend: "check the reading and its unit",
  }),
  "percent-dial": (hole) => ({
    found: `${hole} is a pressure, and the dial shows percent`,
    expected: "what the dial shows: 1.0mm:35%",
    mend: "write the percent that the dial showed",
  }),
};

export type Misfit = "division" | "offset" | "supply" | "no-bore" | "tolerance";

export const misfitWords: Readonly<Record<Misfit, (value: string, other: string) => Said>> = {
  division: (value, scale) => ({
    found: `steps of ${value} on a scale of ${scale}`,
    expected: "the smallest step of the scale, at most half of it",
    mend: "check the smallest step and the full scale on the dial",
  }),
  offset: (value, scale) => ({
    found: `a gauge that reads ${value} too high on a scale of ${scale}`,
    expected: "at most a quarter of the scale",
    mend: "check the figure and its unit: it is what the gauge reads less what is true",
  }),
  supply: (value, scale) => ({
    found: `a supply of ${value} on a dial that ends at ${scale}`,
    expected: "a supply that the dial can show",
    mend: "check the supply and the full scale, and their units",
  }),
  "no-bore": (value) => ({
    found: `the bore is known to ${value}, and no bore is given`,
    expected: "the bore with its tolerance, or neither",
    mend: "give the bore of the restrictor too, or leave the tolerance out",
  }),
  tolerance: (value, bore) => ({
    found: `a tolerance of ${value} on a bore of ${bore}`,
    expected: "at most half the bore",
    mend: "check both figures and their units",
  }),
};
