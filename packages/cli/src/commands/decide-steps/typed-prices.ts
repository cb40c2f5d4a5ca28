// Prices typed on the command line: `--price work.reRing=620 jobs.headOff=350`.

import {
  type TypedPrice,
  engineFields,
  expectation,
  nearest,
  readPrice,
  typedExample,
} from "@sealtrend/core/parts";
import { type Args, type Fault, Stop } from "../../command.ts";
import { usageFault } from "../usage.ts";

/** @throws Stop 2 with every price that cannot be read */
export const typedPrices = (args: Args): readonly TypedPrice[] => {
  const typed = args.list("price").flatMap((text) =>
    text
      .trim()
      .replace(/\s*=\s*/g, "=")
      .split(/\s+/),
  );
  const read = typed.map((text) => ({ text, ...readPrice(withoutPrefix(text)) }));
  const faults = read.flatMap((one) => (one.ok ? [] : [faultOf(one.text, one.found, one.path)]));
  const prices = read.flatMap((one) => (one.ok ? [one.price] : []));
  const twice = prices.filter(({ path }, i) => prices.findIndex((other) => other.path === path) < i);
  const all = [...faults, ...twice.map(twiceFault)];
  if (all.length > 0) throw new Stop(2, all);
  return prices;
};

const withoutPrefix = (text: string): string => text.replace(/^prices\./, "");

/** Every name that takes a number, as it stands below `prices`. */
const names = Object.keys(engineFields).flatMap((path) =>
  path.startsWith("prices.") && path !== "prices.currency" ? [path.slice("prices.".length)] : [],
);

const faultOf = (text: string, found: "no-sign" | "path" | "value", path: string): Fault => {
  const name = found === "value" ? path : (nearestName(path) ?? "work.reRing");
  const isNear = found === "path" && nearestName(path) !== undefined;
  const mend = `--price ${name}=${numberFor(name, text)}`;
  const known = isNear ? `a price such as ${name}` : `a name and a number; names: ${names.join(", ")}`;
  return usageFault(
    found === "path" ? "price-unknown" : "price-bad",
    `--price "${text}"`,
    found === "value" ? rangeOf(name) : known,
    mend,
  );
};

const rangeOf = (name: string): string => {
  const field = engineFields[`prices.${name}`];
  return field?.kind === "number"
    ? expectation(field)
    : "one number of 0 or more, without a unit or a sign for thousands";
};

/** What was meant where a number stands in it, else an example. */
const numberFor = (name: string, text: string): string => {
  const field = engineFields[`prices.${name}`];
  const value = (/=(.*)$/.exec(text)?.[1] ?? "").replace(/(?<=[1-9]\d{0,2})[.,'](?=\d{3}\b)/g, "");
  const number = /\d+(?:\.\d+)?/.exec(value)?.[0];
  const isOver = field?.kind === "number" && Number(number) > field.most;
  return number === undefined || isOver ? (field === undefined ? "620" : typedExample(field)) : number;
};

const nearestName = (path: string): string | undefined => {
  const last = (name: string): string => (name.split(".").at(-1) ?? name).toLowerCase();
  return (
    nearest(path, names)[0] ??
    names.find((name) => last(name) === last(path)) ??
    names.find((name) => nearest(last(path), [last(name)]).length > 0)
  );
};

const twiceFault = ({ path, value }: TypedPrice): Fault =>
  usageFault(
    "price-twice",
    `${path} has two prices`,
    "one price for each name",
    `--price ${path}=${String(value)}`,
  );
