// The cases of data/reference/teardown-cases.json: what was given and what another program found.

import { readFileSync } from "node:fs";
import { type Length, length, toSi } from "@sealtrend/core";
import { expect } from "vitest";

export interface Case<Given, Expected> {
  readonly id: string;
  readonly given: Given;
  readonly expected: Expected;
}

/** A limit that is open is null. */
type Open = number | null;

export interface Cases {
  readonly bores: readonly Case<
    {
      readonly levels: readonly string[];
      readonly directions: readonly string[];
      readonly diameters: readonly (readonly number[])[];
      readonly original: number;
    },
    Readonly<Record<"taper" | "outOfRound" | "cylindricity" | "range" | "wear", number>>
  >[];
  readonly ovals: readonly Case<{ ovality: number; degrees: number }, { seen: number }>[];
  readonly oversizes: readonly Case<
    {
      readonly largest: readonly number[];
      readonly scores: readonly number[];
      readonly original: number;
      readonly nominal: number;
      readonly offered: readonly number[];
      readonly offset: "worst" | "none" | number;
      readonly hone: number;
      readonly guard: number;
    },
    {
      readonly needed: readonly number[];
      readonly own: readonly Open[];
      readonly size: Open;
      readonly finished: Open;
      readonly boreTo: Open;
    }
  >[];
  readonly undersizes: readonly Case<
    {
      readonly smallest: readonly number[];
      readonly low: number;
      readonly high: number;
      readonly offered: readonly number[];
      readonly stock: number;
      readonly bend: number;
    },
    {
      readonly needed: number;
      readonly decidedBy: number;
      readonly size: Open;
      readonly low: Open;
      readonly high: Open;
    }
  >[];
  readonly works: readonly Case<
    Readonly<
      Record<
        | "bore"
        | "stroke"
        | "ratio"
        | "deck"
        | "gasketBore"
        | "gasket"
        | "newBore"
        | "opening"
        | "skim"
        | "deckSkim"
        | "newGasket"
        | "crown",
        number
      >
    >,
    {
      readonly swept_ml: number;
      readonly clearance_ml: number;
      readonly afterSwept_ml: number;
      readonly after_ml: number;
      readonly ratio: number;
      readonly warnings: readonly string[];
    }
  >[];
  readonly threads: readonly Case<
    Readonly<Record<"diameter" | "width" | "uDiameter" | "uWidth", number>>,
    Readonly<Record<"clearance" | "u", number>>
  >[];
  readonly singles: readonly Case<Readonly<Record<string, number>>, Readonly<Record<string, number>>>[];
  readonly faces: readonly Case<
    {
      readonly lines: readonly {
        readonly name: string;
        readonly at: readonly number[];
        readonly gaps: readonly number[];
      }[];
    },
    { readonly overall: number; readonly local: Open; readonly skim: number }
  >[];
  readonly judgements: readonly Case<
    { readonly value: number; readonly u: number; readonly low: Open; readonly high: Open },
    { readonly p: number; readonly verdict: string; readonly neverInside: boolean; readonly needed: Open }
  >[];
  readonly feelers: readonly Case<
    {
      readonly goes: number;
      readonly stops: number;
      readonly blur: number;
      readonly low: Open;
      readonly high: Open;
    },
    { readonly p: number; readonly verdict: string; readonly u: number }
  >[];
  readonly parts: readonly Case<
    { readonly chances: readonly number[] },
    { readonly atLeast: number; readonly atMost: number; readonly verdict: string }
  >[];
  readonly instruments: readonly Case<
    { readonly instrument: string; readonly resolution_um: number },
    Readonly<Record<"common_um" | "read_um" | "u_um", number>>
  >[];
}

const file = new URL("../../data/reference/teardown-cases.json", import.meta.url);
export const teardownCases = JSON.parse(readFileSync(file, "utf8")) as Cases;

export const mm = (millimetres: number): Length => length(toSi(millimetres, "mm"));
export const inMm = (metres: number): number => metres * 1000;

export const limits = ({ low, high }: { readonly low: Open; readonly high: Open }) => ({
  ...(low === null ? {} : { low: mm(low) }),
  ...(high === null ? {} : { high: mm(high) }),
});

/** Within a nanometre, or another bound. */
export const near = (found: number | undefined, expected: number, within = 1e-6): void => {
  expect(found).toBeDefined();
  expect(Math.abs((found ?? NaN) - expected)).toBeLessThanOrEqual(within);
};
