// The dry cranking test. Makers differ on heat, plugs and strokes: the middle way is given, the manual wins.

import {
  fuelMist,
  hotCoolant,
  injection,
  licensed,
  makerFirst,
  outOfGear,
  propeller,
  ventilate,
} from "./cautions.ts";
import {
  type Line,
  type Sheet,
  commonPractice,
  judgement,
  releaseFitted,
  several,
  single,
  portsOnly,
  withValves,
} from "./line.ts";

/** What every cranking test needs first. */
export const preparation: readonly Line[] = [
  makerFirst,
  {
    text: "Engine warm and stopped, battery full: slow or cold cranking reads low.",
    source: "Ford, TM 5-4210-230-14&P-1, Kubota WSM (warm); GM Prizm 2001 asks for a cool aluminium head",
  },
  {
    text: "Plug wells clean, all plugs out; throttle and choke wide open.",
    source: "nearly all makers (Honda VT750C 1998 takes one plug out); throttle: all petrol manuals read",
    only: "spark",
  },
  {
    text: "Ignition off, leads grounded; fuel off (injected: key off).",
    source: "Ford, GM, Suzuki, Mercury outboard manuals",
    only: "spark",
  },
  {
    text: "Fuel cut, and proved cut; injectors or glow plugs out.",
    source: "Peugeot XUD, Yanmar, Mitsubishi S3L manuals",
    only: "diesel",
  },
  {
    text: "Only a diesel gauge, 40 bar or more, right dummy and washer.",
    source: "Mercedes W203 manual (about 40 atm); Peugeot, Yanmar",
    only: "diesel",
  },
  {
    text: "Release lifted as the maker says, every time; else --release active.",
    source: "Suzuki Vinson, RM-Z250 and Toro/Kawasaki publish figures with it active",
    when: releaseFitted,
  },
  {
    text: "Exhaust valves but no inlet valves: many makers test it running.",
    source: "TM 5-3895-359-14&P, TM 5-3810-303-24 (600 rpm, not the starter)",
    when: ({ engine }) => engine.porting === "ports-and-exhaust-valve",
  },
];

const lash: Line = {
  text: "Valve lash as the manual says: a tight valve reads like a burnt one.",
  source: "Mercury 40 four-stroke, Kubota WSM, Suzuki ATV manuals (lash first)",
  when: withValves,
};

export const crankingCautions: readonly Line[] = [
  licensed,
  propeller,
  outOfGear,
  ventilate,
  fuelMist,
  injection,
  hotCoolant,
];

export const dry: Sheet = {
  name: "Dry compression test",
  before: [...preparation, lash],
  steps: [
    { text: "Gauge in by hand, seal seen, needle back to zero.", source: commonPractice },
    {
      text: "Crank 5 or 6 strokes, always the same; 15 s at most; read.",
      source: "Ford, TM 5-4210-230-14&P-1 (5 or more, the same); GM Duramax (6); Saturn L300 (15 s)",
    },
    {
      text: "Each cylinder, without a pause; then go round again, three times.",
      source: "Kubota WSM (twice or more); three: computed by this project",
      when: several,
    },
    {
      text: "Three times over; hold it against its own past and the maker only.",
      source: judgement,
      when: single,
    },
    { text: "Note gauge, strokes, speed or volts, height, air and engine heat.", source: commonPractice },
    {
      text: ({ engine }) => `sealtrend enter ${engine.id} --dry "…" --unit … --strokes 6`,
      source: "this tool",
    },
  ],
  cautions: crankingCautions,
  voids: [
    {
      text: "throttle or choke not wide open",
      source: "all petrol manuals read",
      when: ({ engine }) => engine.ignition === "spark",
    },
    { text: "needle at its stop; other strokes; cranking below 100 rpm, or fading", source: judgement },
    {
      text: "not seen by this test: how well the crankcase seals",
      source: "Toro two-stroke manual; common practice",
      when: portsOnly,
    },
  ],
};
