// The other tester of `restate`, and what was taken for granted of the two.

import {
  type LeakQuestion,
  type OtherTester,
  type Restrictor,
  gaugePressure,
  length,
  pressureAtAltitude,
  restrictorOf,
} from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { type Testers, restrictorTyped } from "./restate-testers.ts";
import type { TypedValue, Values } from "./restate-values.ts";

export interface OtherTyped {
  readonly tester: OtherTester;
  /** Its supply as typed. */
  readonly supply?: TypedValue;
  readonly assumed: readonly string[];
}

const parts = ["restrictor", "restrictor-tolerance", "restrictor-length", "profile", "cd"];

/** What is left out is as on the first tester: its supply, its make, its height.
 *  @returns undefined where no other tester is told */
export const otherTyped = (
  args: Args,
  values: Values,
  {
    first,
    testers: { here, there, compared },
  }: { readonly first: Pick<LeakQuestion, "restrictor" | "knownHoles">; readonly testers: Testers },
): OtherTyped | undefined => {
  const typed = values.supply("to-regulated", "100psi");
  const supply = typed === undefined ? there?.regulated : gaugePressure(typed.si);
  const height = values.height("to-altitude");
  const given = (name: string): boolean => args.text(`to-${name}`) !== undefined;
  const isTyped = parts.some(given);
  const isAsKnown = !isTyped && !parts.some((name) => args.text(name) !== undefined);
  const isSame = there !== undefined && there.id === here?.id && isAsKnown;
  const madeAlike = there === undefined && !given("cd") && !given("profile");
  const restrictor = restrictorTyped(args, values, {
    prefix: "to-",
    known:
      there === undefined
        ? madeLike(first.restrictor, madeAlike ? "alike" : "otherwise")
        : restrictorOf(there),
  });
  const another = (there !== undefined && !isSame) || isTyped;
  if (!another && there === undefined && !given("regulated") && !given("altitude")) return undefined;
  const byHoles = first.restrictor.bore === undefined && first.knownHoles !== undefined;
  const counted = isAsKnown && another && !byHoles ? compared : undefined;
  return {
    tester: {
      ...(supply === undefined ? {} : { supply }),
      ...(another ? { restrictor } : {}),
      ...(height === undefined ? {} : { ambient: pressureAtAltitude(length(height.si)) }),
      ...(counted === undefined ? {} : { compared: counted }),
    },
    ...(typed === undefined ? {} : { supply: typed }),
    assumed: [
      ...(another || isSame ? [] : ["the same restrictor"]),
      ...(another && byHoles ? ["the other restrictor made like the drilled holes"] : []),
      ...(another && madeAlike && !byHoles ? ["both restrictors made alike"] : []),
      ...(supply === undefined ? ["the same supply"] : []),
    ],
  };
};

/** The first restrictor as the other one's beginning. A measured coefficient holds only where they are alike. */
const madeLike = ({ bore, profile, cd }: Restrictor, make: "alike" | "otherwise"): Restrictor => ({
  ...(bore === undefined ? {} : { bore }),
  ...(profile === undefined ? {} : { profile }),
  ...(cd === undefined || make === "otherwise" ? {} : { cd }),
});

/** A bore as it is told: `0.025 mm`. */
export type BoreText = (metres: number) => string;

/** What was taken for granted of the bores, the holes and their make. */
export const madeAs = (
  { restrictor, knownHoles, other }: Pick<LeakQuestion, "restrictor" | "knownHoles" | "other">,
  text: BoreText,
): readonly string[] => {
  if (other?.compared !== undefined) return [];
  const { bore, cd, profile, tolerance } = restrictor;
  const byHoles = bore === undefined && knownHoles !== undefined;
  const there = other?.restrictor;
  const own = byHoles ? ["drilled holes within 0.02 mm"] : [];
  if (bore === undefined && (!byHoles || there?.bore === undefined)) return own;
  const make =
    cd === undefined && profile === undefined && !byHoles ? ["the make of the restrictor unknown"] : [];
  const untold =
    (tolerance === undefined && !byHoles) || (there !== undefined && there.tolerance === undefined);
  return [...own, ...make, ...(untold ? [`bores within ${text(0.000_025_4)}`] : [])];
};
