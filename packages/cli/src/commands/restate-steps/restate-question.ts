// From the options of `restate` to the question put to the core, with every assumption said.

import {
  type Gauge,
  type LeakQuestion,
  type PressureUnit,
  type Typed,
  gaugePressure,
  gaugeUnits,
  length,
  pressureAtAltitude,
  restrictorOf,
  seaLevelPressure,
  usualFullScale,
} from "@sealtrend/core";
import { type Args, Stop } from "../../command.ts";
import { dialsTyped, modelTyped, temperaturesTyped } from "./restate-day.ts";
import { type Testers, madeAs, otherTyped, restrictorTyped } from "./restate-testers.ts";
import { type Values, type Wanted, valuesOf } from "./restate-values.ts";

export interface RestateTyped {
  readonly question: LeakQuestion;
  /** The unit the pressures were typed in. */
  readonly unit: PressureUnit;
  /** What was not told, and what was taken for it. */
  readonly assumed: readonly string[];
}

const percents: Wanted = { expected: "the percent lost, 0 to 100", example: "18%", least: 0, most: 100 };

/** @throws Stop 2 with every fault of the options */
export const restateQuestion = (args: Args, { here, there }: Testers): RestateTyped => {
  const values = valuesOf(args);
  const { typed, unit } = readingTyped(args, values, here);
  const restrictor = restrictorTyped(args, values, {
    prefix: "",
    known: here === undefined ? {} : restrictorOf(here),
  });
  const other = otherTyped(args, values, { first: restrictor, there });
  const height = values.height("altitude");
  const ambient = height === undefined ? seaLevelPressure : pressureAtAltitude(length(height.si));
  const dials = dialsTyped(args, values, {
    supply: typed?.supply ?? usualFullScale(gaugePressure(0)),
    unit,
    tester: here,
  });
  const { assumed: temperatures, ...air } = temperaturesTyped(values);
  const model = modelTyped(args, values);
  if (values.faults.length > 0 || typed === undefined) throw new Stop(2, values.faults);
  return {
    question: {
      typed,
      restrictor,
      ambient,
      uDial: dials.uncertainty,
      ...air,
      ...(other === undefined ? {} : { other: other.tester }),
      model,
    },
    unit,
    assumed: [
      ...(other?.assumed ?? []),
      ...madeAs(restrictor, other?.tester.restrictor),
      ...(typed.supply === undefined ? [] : dials.assumed),
      ...(height === undefined ? ["sea level"] : []),
      ...(typed.supply === undefined ? [] : temperatures),
    ],
  };
};

const readingTyped = (
  args: Args,
  values: Values,
  here: Gauge | undefined,
): { readonly typed?: Typed; readonly unit: PressureUnit } => {
  const read = values.pressure("read");
  const lost = values.number("lost", percents);
  const typedSupply = values.supply("regulated");
  const supply = typedSupply === undefined ? here?.regulated : gaugePressure(typedSupply.si);
  const unit = gaugeUnits.find((name) => name === (read ?? typedSupply)?.unit) ?? here?.unit ?? "psi";
  const given = (name: string): boolean => args.text(name) !== undefined;
  if (given("read") && given("lost"))
    values.note("--read and --lost", "one of the two", "keep the one that stood on the dial");
  else if (!given("read") && !given("lost"))
    values.note("no reading", "what the tester showed", "--read 60psi --regulated 80psi");
  else if (lost !== undefined)
    return { typed: { kind: "lost", lost: lost / 100, ...(supply === undefined ? {} : { supply }) }, unit };
  else if (read !== undefined && supply !== undefined)
    return { typed: { kind: "pressure", cylinder: gaugePressure(read.si), supply }, unit };
  else if (given("read") && !given("regulated") && supply === undefined)
    values.note(
      "--read without the supply",
      "the supply side too, or the part lost in percent",
      "add --regulated 80psi",
    );
  return { unit };
};
