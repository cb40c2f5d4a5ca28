// The leak-down (differential pressure) test: air in at top dead centre, and where it comes out.

import { hotCoolant, injection, licensed, makerFirst, ventilate } from "./cautions.ts";
import {
  type Sheet,
  aircraft,
  commonPractice,
  judgement,
  liquidCooled,
  onWheels,
  portsOnly,
  twoStroke,
  withValves,
} from "./line.ts";

export const leakDown: Sheet = {
  name: "Leak-down test",
  before: [
    makerFirst,
    { text: "Just stopped, still warm: oil on the walls seals the rings.", source: "AC 43.13-1B par. 8-14" },
    {
      text: "Ignition off, leads off; plugs out; throttle wide open.",
      source: "AC 43.13-1B; Dodge 2002, Mercedes M104 (throttle)",
      only: "spark",
    },
    { text: "Fuel cut; adapter in the injector or glow plug hole.", source: commonPractice, only: "diesel" },
    {
      text: "Coolant full; for bubbles, its cap off only once it has cooled.",
      source: "Dodge 2002 service information",
      when: liquidCooled,
    },
    {
      text: "Valve shut, 80 psi: both dials agree to 2 psi. No check valve in hose.",
      source: "Lycoming IO-390-D manual 72-30 (2 psi); check valve: trade sources",
    },
    {
      text: "Where the maker asks for a master orifice: read it first (--master 43).",
      source: "Continental SB03-3 and the manuals that repeat it",
      when: (s) => aircraft(s) && withValves(s) && !liquidCooled(s),
    },
  ],
  steps: [
    {
      text: "Piston to top dead centre, compression stroke, turning forwards.",
      source: "AC 43.13-1B par. 8-14",
      when: (s) => !twoStroke(s),
    },
    {
      text: "Piston to top dead centre, ports shut, turning forwards.",
      source: "Mercury OptiMax 200 manual",
      when: twoStroke,
    },
    {
      text: "20 psi first, slowly: feel for the dead point; crank held; then 80 psi.",
      source: "AC 43.13-1B par. 8-14 (20 psi, then 80)",
    },
    { text: "Overshot? Back half a turn and come up again.", source: "AC 43.13-1B par. 8-14" },
    {
      text: "Set 80 again with air flowing; rock a little; read it steady, twice.",
      source: "AC 43.13-1B; Lycoming SI 1191A (rock); Saturn L-series (wait 60 s)",
    },
    {
      text: "Listen: inlet, exhaust, oil filler, plug holes; bubbles in coolant.",
      source: "Dodge 2002, GM Silverado 6.0, Mazda/Ford 2.3",
      when: (s) => withValves(s) && liquidCooled(s),
    },
    {
      text: "Listen: inlet, exhaust, oil filler, plug holes; soap on the joints.",
      source: "Lycoming 72-30; Continental TSIO-360-RB manual (soap)",
      when: (s) => withValves(s) && !liquidCooled(s),
    },
    {
      text: "Listen: inlet, exhaust, head joint, any other plug hole.",
      source: commonPractice,
      when: (s) => !withValves(s),
    },
    {
      text: ({ engine }) => `sealtrend enter ${engine.id} --leak-down "74/80 …" --heard "none …"`,
      source: "this tool",
    },
  ],
  cautions: [
    licensed,
    {
      text: "Air swings the propeller: a second person holds it; out of its arc.",
      source: "AC 43.13-1B par. 8-14; Lycoming SI 1191A; Continental M-0",
      when: aircraft,
    },
    {
      text: "Air off dead centre turns the crank: bars and sockets off, hands clear.",
      source: "AC 43.13-1B par. 8-14; trade sources (crank tools)",
      when: (s) => !aircraft(s),
    },
    {
      text: "Brake on; out of gear, or in top gear to hold the crank.",
      source: "Saturn L-series; trade sources (top gear)",
      when: onWheels,
    },
    {
      text: "Blow the plug wells out first; clean, dry air; goggles; never on skin.",
      source: "AC 43.13-1B (clean air); Saturn L300 (plug wells); 29 CFR 1910.242(b)",
    },
    ventilate,
    injection,
    hotCoolant,
  ],
  voids: [
    { text: "air at inlet and exhaust together: wrong stroke", source: commonPractice, when: withValves },
    {
      text: "strong flow through the ports: not at the top",
      source: "Mercury OptiMax 200 manual",
      when: portsOnly,
    },
    { text: "crank moved, or pressure not set again, while reading", source: judgement },
    {
      text: "no maker's per cent for diesels was found: compare cylinders",
      source: "searched by this project",
      when: ({ engine }) => engine.ignition === "compression",
    },
  ],
};
