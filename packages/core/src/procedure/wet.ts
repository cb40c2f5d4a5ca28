// The wet test: a measured drop of oil, in the low cylinder and in a sound one as control.

import { oilAmount } from "../cranking/index.ts";
import { writeQuantity } from "../quantity/index.ts";
import { fuelMist, licensed, makerFirst, outOfGear, propeller, ventilate } from "./cautions.ts";
import { type Sheet, type Situation, judgement, several, single } from "./line.ts";
import { oilAlone, oilShare } from "./oil.ts";

const dose = ({ oil }: Situation): string => writeQuantity(oil, "ml");
const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
const isMuch = (situation: Situation): boolean => oilAmount(oilShare(situation) ?? 0) !== "fits";

/** `That fills 4 % of the chamber (118 ml) and lifts a sound one up to 6 %.` */
const roomText = (situation: Situation): string => {
  const { chamber } = situation;
  const alone = oilAlone(situation);
  const of = chamber === undefined ? "" : ` (${(chamber * 1e6).toFixed(0)} ml)`;
  const lifts =
    alone === undefined ? "a sound one rises too" : `a sound one rises by up to ${percent(alone)}`;
  return `That is ${percent(oilShare(situation) ?? 0)} of the chamber${of}: ${lifts}.`;
};

export const wet: Sheet = {
  name: "Wet (oil) test",
  before: [
    makerFirst,
    {
      text: "The dry test comes first: same day, same gauge, all as it stands.",
      source: "GM, Ford, TM 5-4210-230-14&P-1",
    },
    {
      text: (situation) => `A syringe and ${dose(situation)} of engine oil a cylinder, measured.`,
      source:
        "3 to 5 ml Honda VT750C; 5 ml Ford Probe 1997, Nissan, Yamaha; 15 ml GM and Ford raises a sound one much",
    },
    {
      text: roomText,
      source: "computed by this project from bore, stroke and compression ratio; an upper bound",
      when: (situation) => situation.chamber !== undefined,
    },
    {
      text: "Chamber not known: in a small one 5 ml is a lot. Bore, stroke and ratio would tell.",
      source: "5 ml fill 20 % of the chamber of a 225 ml cylinder at 10:1; computed by this project",
      when: ({ chamber, engine }) => chamber === undefined && engine.wetTest?.oil === undefined,
    },
    {
      text: "Plugs out, ignition and fuel off, throttle open, as for dry.",
      source: "all petrol manuals read",
      only: "spark",
    },
    {
      text: "Fuel cut and diesel gauge, as for the dry test.",
      source: "Kubota WSM, Suzuki RHZ",
      only: "diesel",
    },
  ],
  steps: [
    {
      text: (situation) =>
        `${dose(situation)} into the low cylinder, and the same into a sound one: control.`,
      source: "control cylinder: judgement of this project, for the oil takes up room itself",
      when: several,
    },
    { text: (situation) => `${dose(situation)} into the cylinder.`, source: "as above", when: single },
    {
      text: "Turn it 5 or 6 turns by hand, holes open: it must turn freely.",
      source: "TM 10-3930-618-20 (turns); Navy text, second hand (lock)",
    },
    { text: "Gauge in; the same strokes as dry; read. Once is enough.", source: "GM, Ford" },
    {
      text: "Rise of the low one less that of the control: 10 % or more is rings.",
      source: "10 %: Ford Probe 1997; less the control: judgement of this project",
      when: several,
    },
    {
      text: (situation) => {
        const alone = oilAlone(situation);
        const own = alone === undefined ? "" : ` beyond the oil's own ${percent(alone)}`;
        return `A rise of 10 % or more${own} points at the rings.`;
      },
      source: "10 %: Ford Probe 1997; the oil's own share: computed by this project",
      when: single,
    },
    {
      text: ({ engine, oil }) =>
        `sealtrend enter ${engine.id} --same-test --wet "…" --oil "${String(Math.round(oil * 1e6))} …" --unit …`,
      source: "this tool",
    },
  ],
  cautions: [
    {
      text: (situation) =>
        isMuch(situation)
          ? `${percent(oilShare(situation) ?? 0)} of the chamber is much: turn it by hand first; liquid bends rods.`
          : "More is not better: liquid does not give way, and bends rods.",
      source: "Navy text, second hand; common practice; much from a quarter on: judgement of this project",
    },
    licensed,
    propeller,
    outOfGear,
    ventilate,
    { ...fuelMist, text: "Fuel mist and oil come from open holes: no flame." },
  ],
  voids: [
    {
      text: "a flat or leaning cylinder, or a dished piston: oil runs off, weak proof",
      source: "common practice; Peugeot XUD manual for swirl chambers",
    },
    { text: "another amount in the control; dry test on another day", source: judgement, when: several },
    { text: "no control cylinder: part of any rise is the oil's own room", source: judgement, when: single },
  ],
};
