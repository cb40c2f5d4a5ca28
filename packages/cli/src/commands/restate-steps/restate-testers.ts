// The two testers of `restate`: as the logbook knows them, and over that as typed.

import {
  type Gauge,
  type OtherTester,
  type Restrictor,
  type RestrictorProfile,
  gaugePressure,
  length,
  pressureAtAltitude,
  restrictorOf,
} from "@sealtrend/core";
import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { openLogbook } from "../../logbook/open-logbook.ts";
import { nodeWorld } from "../../logbook/world.ts";
import { gaugeNamed } from "../gauge-steps/gauge-row.ts";
import type { Values, Wanted } from "./restate-values.ts";
import { usage } from "../usage.ts";

/** Testers named on the command line. */
export interface Testers {
  readonly here?: Gauge;
  readonly there?: Gauge;
}

/** The logbook is opened only where a tester is named. @throws Stop 2 for a name that is no tester */
export const namedTesters = async (args: Args, io: Io): Promise<Testers> => {
  const names = [args.text("gauge"), args.text("to-gauge")];
  if (names.every((name) => name === undefined)) return {};
  const logbook = await openLogbook(nodeWorld(io), "read", args.text("logbook"));
  const [here, there] = names.map((name) => {
    const gauge = name === undefined ? undefined : gaugeNamed(logbook, name);
    if (gauge?.kind === "compression")
      throw usage(
        "gauge-kind",
        `${gauge.id} is a compression gauge`,
        "a leak-down tester",
        "sealtrend gauge list",
      );
    return gauge;
  });
  return { ...(here === undefined ? {} : { here }), ...(there === undefined ? {} : { there }) };
};

const coefficients: Wanted = {
  expected: "a discharge coefficient, 0.3 to 1",
  example: "0.82",
  least: 0.3,
  most: 1,
};

/** @param prefix - `to-` for the other tester @param known - what is not typed is taken from it */
export const restrictorTyped = (
  args: Args,
  values: Values,
  { prefix, known }: { readonly prefix: "" | "to-"; readonly known: Restrictor },
): Restrictor => {
  const bore = values.bore(`${prefix}restrictor`);
  const tolerance = values.tolerance(`${prefix}restrictor-tolerance`);
  const long = values.length(`${prefix}restrictor-length`);
  const cd = values.number(`${prefix}cd`, coefficients);
  const profile = profiles.find((word) => word === args.text(`${prefix}profile`));
  const { bore: knownBore, ...made } = known;
  const kept = args.text(`${prefix}restrictor`) === undefined ? knownBore : undefined;
  const own = bore === undefined ? kept : length(bore.si);
  return {
    ...made,
    ...(own === undefined ? {} : { bore: own }),
    ...(tolerance === undefined ? {} : { tolerance: length(tolerance.si) }),
    ...(long === undefined ? {} : { length: length(long.si) }),
    ...(profile === undefined ? {} : { profile }),
    ...(cd === undefined ? {} : { cd }),
  };
};

const profiles: readonly RestrictorProfile[] = ["coned", "square", "thin-plate", "unknown"];

export interface OtherTyped {
  readonly tester: OtherTester;
  readonly assumed: readonly string[];
}

/** What is left out is as on the first tester: its supply, its make, its height.
 *  @returns undefined where no other tester is told */
export const otherTyped = (
  args: Args,
  values: Values,
  { first, there }: { readonly first: Restrictor; readonly there?: Gauge | undefined },
): OtherTyped | undefined => {
  const typed = values.supply("to-regulated");
  const supply = typed === undefined ? there?.regulated : gaugePressure(typed.si);
  const height = values.height("to-altitude");
  const given = (name: string): boolean => args.text(`to-${name}`) !== undefined;
  const madeAlike = there === undefined && !given("cd") && !given("profile");
  const restrictor = restrictorTyped(args, values, {
    prefix: "to-",
    known: there === undefined ? madeLike(first, madeAlike ? "alike" : "otherwise") : restrictorOf(there),
  });
  const parts = ["restrictor", "restrictor-tolerance", "restrictor-length", "profile", "cd"];
  const another = there !== undefined || parts.some(given);
  if (!another && !given("regulated") && !given("altitude")) return undefined;
  return {
    tester: {
      ...(supply === undefined ? {} : { supply }),
      ...(another ? { restrictor } : {}),
      ...(height === undefined ? {} : { ambient: pressureAtAltitude(length(height.si)) }),
    },
    assumed: [
      ...(another ? [] : ["the same restrictor"]),
      ...(another && madeAlike ? ["both restrictors made alike"] : []),
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

/** What was taken for granted of the bores and their make. */
export const madeAs = (first: Restrictor, other: Restrictor | undefined): readonly string[] => {
  const { bore, cd, profile, tolerance } = first;
  if (bore === undefined) return [];
  const make = cd === undefined && profile === undefined ? ["the make of the restrictor unknown"] : [];
  const untold = tolerance === undefined || (other !== undefined && other.tolerance === undefined);
  return [...make, ...(untold ? ["bores ± 0.025 mm"] : [])];
};
