// The reading of `restate` as typed: a pressure with its supply, or the part lost.

import {
  type Gauge,
  type GaugePressure,
  type PressureUnit,
  type Typed,
  gaugePressure,
  gaugeUnitNamed,
  gaugeUnits,
  openHolesOf,
  trueReading,
} from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import type { Values, Wanted } from "./restate-values.ts";

export interface ReadingTyped {
  /** Absent after a fault. */
  readonly typed?: Typed;
  /** The pressure as it stood on the dial. */
  readonly read?: GaugePressure;
  /** The unit the pressures were typed in. */
  readonly unit: PressureUnit;
  /** Said beside the answer. */
  readonly aside: readonly string[];
}

const percents: Wanted = { expected: "the percent lost, 0 to 100", example: "18%", least: 0, most: 100 };

/** What a tester is known to read too high is taken off. @param here - the tester of the reading, where it is named */
export const readingTyped = (args: Args, values: Values, here: Gauge | undefined): ReadingTyped => {
  const both = bothDials(args.text("read"), here);
  if (both !== undefined) {
    values.note(`--read "${args.text("read") ?? ""}"`, "the two dials one by one, each with its unit", both);
    return { unit: here?.unit ?? "psi", aside: [] };
  }
  const read = values.pressure("read");
  const lost = values.number("lost", percents);
  const typedSupply = values.supply("regulated");
  const supply = typedSupply === undefined ? here?.regulated : gaugePressure(typedSupply.si);
  const unit = gaugeUnits.find((name) => name === (read ?? typedSupply)?.unit) ?? here?.unit ?? "psi";
  const given = (name: string): boolean => args.text(name) !== undefined;
  const from = supply === undefined ? {} : { supply };
  if (given("read") && given("lost"))
    values.note("--read and --lost", "one of the two", "keep the one that stood on the dial");
  else if (!given("read") && !given("lost"))
    values.note("no reading", "what the tester showed", "--read 60psi --regulated 80psi");
  else if (lost !== undefined)
    return { typed: { kind: "lost", lost: lost / 100, ...from }, unit, aside: smallPercent(args, lost) };
  else if (read !== undefined && (supply !== undefined || tellsAlone(args, here))) {
    const dial = gaugePressure(read.si);
    const cylinder = gaugePressure(trueReading(dial, here?.readsHigh ?? 0));
    return { typed: { kind: "pressure", cylinder, ...from }, read: dial, unit, aside: [] };
  } else if (given("read") && !given("regulated") && supply === undefined)
    values.note(
      "--read without the supply",
      "the supply side too, or the part lost in percent",
      "add --regulated 80psi",
    );
  return { unit, aside: [] };
};

/** Two open holes and more tell a pressure without its supply, where no bore does. */
const tellsAlone = (args: Args, here: Gauge | undefined): boolean => {
  const typed = args.text("restrictor");
  const isBoreKnown =
    typed === undefined ? here?.restrictor !== undefined : typed.toLowerCase() !== "unknown";
  return !isBoreKnown && openHolesOf(here, "pressure").length > 1;
};

/** `74/80` as the mechanic says it: the mend has it in two options. */
const bothDials = (text: string | undefined, here: Gauge | undefined): string | undefined => {
  const [, cylinder, first = "", supply, second = ""] =
    /^\s*([\d.]+)\s*((?:[^\d./\s]\S*?)?)\s*\/\s*([\d.]+)\s*(\S*)\s*$/.exec(text ?? "") ?? [];
  if (cylinder === undefined || supply === undefined) return undefined;
  const unit = [first, second].map(gaugeUnitNamed).find((name) => name !== undefined) ?? here?.unit ?? "psi";
  return `--read ${cylinder}${unit} --regulated ${supply}${unit}`;
};

const smallPercent = (args: Args, lost: number): readonly string[] =>
  lost > 0 && lost < 1 && !(args.text("lost") ?? "").includes("%")
    ? [
        `--lost is in percent: ${String(lost)} percent; ${wholePercent(lost)} % is --lost ${wholePercent(lost)}`,
      ]
    : [];

const wholePercent = (fraction: number): string => String(Number((100 * fraction).toPrecision(12)));
