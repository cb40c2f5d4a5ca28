// From the options of `restate` to the question put to the core, with every assumption said.

import {
  type Gauge,
  type KnownHoles,
  type LeakQuestion,
  type PressureUnit,
  type Typed,
  fromSi,
  gaugePressure,
  length,
  openHolesOf,
  pressureAtAltitude,
  restrictorOf,
  seaLevelPressure,
  usualFullScale,
} from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import type { RestateTold } from "../../render/restate/restate-shown.ts";
import { pressureUnit } from "../../render/units.ts";
import { dialsTyped, modelTyped, temperaturesTyped } from "./restate-day.ts";
import { logbookSays } from "./restate-logbook.ts";
import { madeAs, otherTyped } from "./restate-other.ts";
import { readingTyped } from "./restate-reading.ts";
import { type Testers, restrictorTyped } from "./restate-testers.ts";
import { valuesOf } from "./restate-values.ts";

export interface RestateTyped extends RestateTold {
  /** In which pressures are told: as asked, else as typed. */
  readonly unit: PressureUnit;
  /** Said beside the answer. */
  readonly aside: readonly string[];
}

/** @throws Stop 2 with every fault of the options */
export const restateQuestion = (args: Args, testers: Testers): RestateTyped => {
  const { here } = testers;
  const values = valuesOf(args);
  const reading = readingTyped(args, values, here);
  const { typed } = reading;
  const asked = args.text("units");
  const unit = asked === undefined ? reading.unit : pressureUnit(asked, { demo: false }, reading.unit);
  const restrictor = restrictorTyped(args, values, {
    prefix: "",
    known: here === undefined ? {} : restrictorOf(here),
  });
  const knownHoles = typed === undefined ? undefined : holesOf(here, typed);
  const first = { restrictor, ...(knownHoles === undefined ? {} : { knownHoles }) };
  const other = otherTyped(args, values, { first, testers });
  const height = values.height("altitude");
  const ambient = height === undefined ? seaLevelPressure : pressureAtAltitude(length(height.si));
  const supply = typed?.supply ?? usualFullScale(gaugePressure(0));
  const dials = dialsTyped(args, values, { supply, unit, tester: here });
  const { assumed: temperatures, ...air } = temperaturesTyped(values);
  const model = modelTyped(args, values);
  if (values.faults.length > 0 || typed === undefined) throw new Stop(2, values.faults);
  const question: LeakQuestion = {
    typed,
    ...first,
    ambient,
    uDial: dials.uncertainty,
    ...air,
    ...(other === undefined ? {} : { other: other.tester }),
    model,
  };
  const boreUnit = boreUnitOf(args, unit);
  const isSized = typed.supply !== undefined || knownHoles !== undefined;
  const typedThere = other?.supply;
  return {
    question,
    unit,
    boreUnit,
    ...(here === undefined ? {} : { tester: here.id }),
    ...(reading.read === undefined ? {} : { read: reading.read }),
    ...(typedThere === undefined || typedThere.unit === unit
      ? {}
      : {
          otherSupply: `${String(Number(fromSi(typedThere.si, typedThere.unit).toPrecision(6)))} ${typedThere.unit}`,
        }),
    logbook: logbookSays(question, testers, { read: reading.read, unit }),
    aside: [...reading.aside, ...dials.aside],
    assumed: [
      ...(other?.assumed ?? []),
      ...madeAs(question, (bore) => `${String(Number(fromSi(bore, boreUnit).toPrecision(2)))} ${boreUnit}`),
      ...(isSized ? dials.assumed : []),
      ...(height === undefined ? ["sea level"] : []),
      ...(isSized ? temperatures : []),
    ],
  };
};

/** Open holes read on the tester, in the kind of the reading. */
const holesOf = (here: Gauge | undefined, { kind, supply }: Typed): KnownHoles | undefined => {
  const holes = openHolesOf(here, kind, supply);
  if (holes.length === 0) return undefined;
  return { holes, ...(here?.regulated === undefined ? {} : { supply: here.regulated }) };
};

/** Inches only for those who typed them and read psi. */
const boreUnitOf = (args: Args, unit: PressureUnit): "mm" | "in" =>
  unit === "psi" && /in|"/.test(args.text("restrictor") ?? args.text("to-restrictor") ?? "") ? "in" : "mm";
