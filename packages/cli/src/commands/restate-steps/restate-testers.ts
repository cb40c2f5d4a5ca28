// The two testers of `restate`: as the logbook knows them, and over that as typed.

import {
  type ComparedTesters,
  type Gauge,
  type Restrictor,
  type RestrictorProfile,
  length,
  linkBetween,
} from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { type Logbook, openLogbook } from "../../logbook/open-logbook.ts";
import { nodeWorld } from "../../logbook/world.ts";
import { gaugeNamed } from "../gauge-steps/gauge-row.ts";
import type { Values, Wanted } from "./restate-values.ts";
import { usage } from "../usage.ts";

/** Testers named on the command line. */
export interface Testers {
  readonly here?: Gauge;
  readonly there?: Gauge;
  /** How the two stood to each other where they were compared: by the links of the logbook. */
  readonly compared?: ComparedTesters;
}

/** The logbook is opened only where a tester is named. @throws Stop 2 for a name that is no tester */
export const namedTesters = async (args: Args, io: Io): Promise<Testers> => {
  const names = [args.text("gauge"), args.text("to-gauge")];
  if (names.every((name) => name === undefined)) return {};
  const logbook = await openLogbook(nodeWorld(io), "read", args.text("logbook"));
  const [here, there] = names.map((name) => {
    const gauge = name === undefined ? undefined : gaugeNamed(logbook, name, "leak-down");
    if (gauge?.kind === "compression")
      throw usage(
        "gauge-kind",
        `${gauge.id} is a compression gauge`,
        "a leak-down tester",
        "sealtrend gauge list",
      );
    return gauge;
  });
  const compared = here === undefined || there === undefined ? undefined : comparedBy(logbook, here, there);
  return {
    ...(here === undefined ? {} : { here }),
    ...(there === undefined ? {} : { there }),
    ...(compared === undefined ? {} : { compared }),
  };
};

/** Leaks by one tester to leaks by the other are as the restrictor of the other to its own. */
const comparedBy = ({ gauges }: Logbook, here: Gauge, there: Gauge): ComparedTesters | undefined => {
  const link = here.id === there.id ? undefined : linkBetween(gauges, here.id, there.id);
  return link === undefined
    ? undefined
    : { areaRatio: Math.exp(-link.shift), uncertainty: Math.sqrt(link.variance) };
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
  if (tolerance !== undefined && bore !== undefined && tolerance.si > bore.si / 2)
    values.note(
      `--${prefix}restrictor-tolerance "${args.text(`${prefix}restrictor-tolerance`) ?? ""}"`,
      "how far the bore may be off either way, at most half of it",
      `--${prefix}restrictor-tolerance 0.02mm`,
    );
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
