// What the command line says of the sheet: as hints for a guess, and over a map that is there.

import type { DecimalMark, ImportHints, ImportMap, SheetDelimiter } from "@sealtrend/core/parts";
import { type Args, type Fault, Stop } from "../../command.ts";
import { type Encoding, encodings } from "../../logbook/encoding.ts";
import { typedDay } from "../typed/typed-day.ts";
import { usageFault } from "../usage.ts";
import type { MapFile } from "./map-file.ts";

const decimals: Readonly<Record<string, DecimalMark>> = { comma: ",", point: "." };
const separators: Readonly<Record<string, SheetDelimiter>> = { comma: ",", semicolon: ";", tab: "\t" };
const orders = ["dmy", "mdy", "ymd"] as const;

/** Everything that is typed of a sheet, in the map's own words; what was not typed is undefined. */
const typedOf = (args: Args, today: string) => ({
  delimiter: separators[args.text("separator") ?? ""],
  decimal: decimals[args.text("decimal") ?? ""],
  dates: orders.find((order) => order === args.text("dates")),
  unit: args.text("unit"),
  what: args.text("what"),
  gauge: args.text("gauge"),
  by: args.text("by"),
  date: typedDay(args, { today }, "the test"),
});

/** The encoding that was typed. */
export const typedEncoding = (args: Args): Encoding | undefined =>
  encodings.find((name) => name === args.text("sheet-encoding"));

/** @param known - the engines of the logbook  @param encoding - that the sheet was read by
 *  @throws Stop 2 for a day that is none */
export const importHints = (
  args: Args,
  today: string,
  { known, encoding }: { readonly known: NonNullable<ImportHints["known"]>; readonly encoding: Encoding },
): ImportHints => {
  const engine = args.text("engine");
  return {
    ...stated(typedOf(args, today)),
    known,
    encoding,
    ...(engine === undefined ? {} : { engine }),
  };
};

/** The map with what was typed where it says nothing. What the map says stands: it was looked through by a person.
 *  @throws Stop 2 for a day that is none, and for an option that the map says otherwise */
export const withTyped = (
  { map, file }: Pick<MapFile, "map" | "file">,
  args: Args,
  today: string,
): ImportMap => {
  const { unit, what, gauge, by, date, ...plain } = typedOf(args, today);
  const engine = args.text("engine");
  const fixed = Object.entries(stated({ unit, what, gauge, by, date, engine })).map(
    ([entry, text]) => [entry, { fixed: text }] as const,
  );
  const typed: Partial<ImportMap> = { ...stated(plain), ...Object.fromEntries(fixed) };
  const against = mapOptions.flatMap(({ entry, option }) => {
    const [said, meant] = [map[entry], typed[entry]];
    const isGap = said === undefined && entry !== "engine";
    return meant === undefined || isGap || isAlike(said, meant)
      ? []
      : [againstFault(option, entry, { file, meant })];
  });
  const faults = [...against, ...againstIgnition({ map, file }, args)];
  if (faults.length > 0) throw new Stop(2, faults);
  return { ...map, ...typed };
};

/** The map says of some engine that it fires otherwise than was typed of all. */
const againstIgnition = ({ map, file }: Pick<MapFile, "map" | "file">, args: Args): readonly Fault[] => {
  const typed = args.text("ignition");
  const other = map.engines.find(
    ({ engine, ignition = "unknown" }) => engine !== "" && ignition !== "unknown" && ignition !== typed,
  );
  if (typed === undefined || typed === "unknown" || other === undefined) return [];
  return [
    usageFault(
      "from-and-option",
      `--ignition ${typed}, and the map says ${other.ignition ?? ""} of ${other.engine}`,
      "one of the two: an option fills what the map leaves open",
      `leave --ignition out, and write "ignition": "${typed}" in ${file} for those that fire so`,
    ),
  ];
};

const mapOptions = [
  { entry: "delimiter", option: "separator" },
  ...(["decimal", "dates", "unit", "what", "gauge", "by", "date", "engine"] as const).map((entry) => ({
    entry,
    option: entry,
  })),
] as const;

const isAlike = (said: unknown, meant: unknown): boolean => JSON.stringify(said) === JSON.stringify(meant);

const againstFault = (
  option: string,
  entry: string,
  { file, meant }: { readonly file: string; readonly meant: unknown },
): Fault =>
  usageFault(
    "from-and-option",
    `--${option} with a map that is there and says it otherwise`,
    "one of the two: an option fills what the map leaves open",
    `leave --${option} out, or write "${entry}": ${JSON.stringify(meant)} in ${file}`,
  );

/** The separator that was typed. */
export const typedSeparator = (args: Args): SheetDelimiter | undefined =>
  separators[args.text("separator") ?? ""];

type Stated<T> = { readonly [key in keyof T]?: Exclude<T[key], undefined> };

/** Only what is not undefined. */
const stated = <T extends object>(all: T): Stated<T> =>
  Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as Stated<T>;
