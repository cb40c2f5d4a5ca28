// What to do for each test of the tables, on this engine and its low cylinders. Common practice, no source.

import type { FurtherTest } from "../../diagnosis/index.ts";
import type { Engine } from "../../record/index.ts";

export interface TestFacts {
  readonly engine: Engine;
  /** The cylinders in question, `2 and 3`. */
  readonly labels: string;
  /** The same without those whose low reading does not look like a leak; empty where none is left. */
  readonly leaking: string;
  /** A sound cylinder to hold against. */
  readonly control: string | undefined;
  /** Present where it got oil, and another gauge read that than the dry. */
  readonly oiledByTwo?: true;
  /** Whether a comparison of all is needed: high ones beside low ones, or nothing that stands out. */
  readonly reach: "low" | "every";
  /** Where air was heard at a neighbour: the cylinder with the air in, and the neighbour. */
  readonly neighbour: { readonly label: string; readonly at: string } | undefined;
}

type Words = (facts: TestFacts) => string;

/** Where the air of the crankcase is heard: a two-stroke with ports has no oil filler. */
export const breather = ({ porting }: Engine): string => (porting === "ports" ? "crankcase" : "oil filler");

/** Those that the tables call by these codes. */
const texts: Readonly<Partial<Record<string, Words>>> = {
  repeat: ({ labels }) => `read ${labels} again, twice, before you believe it`,
  "first-stroke": () => "the first stroke of every cylinder, and then its last, by one gauge",
  wet: ({ leaking, labels, control, reach, oiledByTwo }) => {
    const again = oiledByTwo === undefined ? "" : " again, dry and oiled by one gauge";
    return reach === "every"
      ? `oil test on every cylinder${again}, as much oil in each`
      : `oil test on ${leaking === "" ? labels : leaking}${again}${control === undefined ? "" : `, with ${control} as control`}`;
  },
  conditions: ({ engine }) =>
    engine.ignition === "compression"
      ? "charge the battery, then test again"
      : "charge the battery, block the throttle wide open, then test again",
  "second-gauge": ({ labels }) => `${labels} again with another gauge`,
  lash: ({ labels }) => `measure the valve lash of ${labels}`,
  release: () => "defeat the compression release, then test again",
  borescope: ({ labels }) => `look into ${labels} with a borescope: valves, walls and crown`,
  "leak-down-and-listen": ({ engine, labels, reach }) =>
    `leak-down on ${reach === "every" ? "every cylinder" : labels}: listen at intake, exhaust and ${breather(engine)}`,
  "leak-down-lower-down": ({ labels }) => `leak-down on ${labels} again with the piston half way down`,
  coolant: () => "look for combustion gas, or a loss of pressure, in the coolant",
  "re-seat-and-repeat": ({ labels }) =>
    `tap the valves of ${labels} off top dead centre, turn it over, then leak-down again`,
  "re-index-the-neighbour": ({ labels, neighbour }) =>
    neighbour === undefined
      ? `leak-down on ${labels} again with the valves of its neighbour shut`
      : `turn it until the valves of ${neighbour.at} are shut, then air into ${neighbour.label} again: still heard there it is the gasket, else a valve and the manifold they share`,
  cranking: ({ engine }) =>
    engine.cylinders.length === 1 ? "a cranking test" : "cranking test of every cylinder",
  running: ({ labels }) => `read ${labels} with the engine running on the others, its lead grounded`,
  "retest-warm": () => "run it warm and test again the same day",
};

/** Of a test that somebody added to the tables, the action stated there. */
export const testText = ({ code, action }: Pick<FurtherTest, "code" | "action">, facts: TestFacts): string =>
  texts[code]?.(facts) ?? action;
