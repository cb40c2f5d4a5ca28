// What is not known of an engine and would help, each with what it is good for.

import type { Engine, JsonObject } from "@sealtrend/core/parts";
import { flatFields } from "../logbook/engine-overview.ts";

export interface MissingField {
  readonly path: string;
  readonly why: string;
}

interface Helpful extends MissingField {
  /** Any of these in its place will do. */
  readonly or?: readonly string[];
  readonly when?: (engine: Engine) => boolean;
}

const several = ({ cylinders }: Engine): boolean => cylinders.length > 1;

const helpful: readonly Helpful[] = [
  {
    path: "limits.compression.minimum",
    or: ["limits.compression.difference", "limits.compression.lowestToHighest"],
    why: "the maker's limit goes before any rule of thumb",
  },
  { path: "limits.compression.speed", why: "readings are brought to the speed of the maker's figures" },
  { path: "limits.leakDown.lost", why: "the maker's leak-down limit, 0.25 for 25 %" },
  { path: "use", why: "rules and cautions differ by use" },
  { path: "cooling", why: "whether coolant can leak in; which cautions hold" },
  { path: "meter", why: "wear goes by hours or distance, not only by years" },
  { path: "homeAltitude_m", why: "for tests that name no place: brings to sea level" },
  { path: "compressionRelease", why: "a release left active lowers every reading" },
  { path: "banks", why: "shows which neighbours share a head gasket", when: several },
  {
    path: "wetTest.allowed",
    why: "a diesel gets no oil unless its maker allows it",
    when: ({ ignition }) => ignition === "compression",
  },
  {
    path: "porting",
    why: "whether it has valves: what air heard in a leak-down points to",
    when: ({ cycle }) => cycle === "two-stroke",
  },
  { path: "geometry.bore", why: "with stroke and ratio: the pressure to expect" },
  { path: "geometry.stroke", why: "with bore and ratio: the pressure to expect" },
  { path: "geometry.compressionRatio", why: "with bore and stroke: the pressure to expect" },
  { path: "geometry.intakeCloses", why: "a late inlet valve lowers the pressure to expect" },
  { path: "prices.work.reRing", why: "with jobs and the other work: lets the decision count in money" },
];

/** In the order of their use. */
export const missingFields = (engine: Engine, fields: JsonObject): readonly MissingField[] => {
  const known = new Set(flatFields(fields).map(([path]) => path));
  const open = helpful.filter(
    ({ path, or = [], when }) => ![path, ...or].some((name) => known.has(name)) && when?.(engine) !== false,
  );
  const unknown =
    engine.ignition === "unknown" ? [{ path: "ignition", why: "rules, oil test and limits hang on it" }] : [];
  return [...unknown, ...open.map(({ path, why }) => ({ path, why }))];
};
