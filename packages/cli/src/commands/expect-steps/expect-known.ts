// What `expect` knows: what was typed, else what the engine's file holds, else nothing; and what cannot be among it.

import {
  type EngineKind,
  type EngineRecord,
  type KnownOfCylinder,
  type Length,
  type LogbookFacts,
  type PressureCorrection,
  type WallHeat,
  absolutePressure,
  angle,
  area,
  length,
  pressureCorrection,
  speed,
  temperature,
  volume,
} from "@sealtrend/core";
import { type Args, type Fault, Stop } from "../../command.ts";
import { plainTyped, quantitiesTyped, type Typed } from "./expect-options.ts";
import { usage, usageFault } from "../usage.ts";

/** Where a size came from: the command line or engine.json. */
export type Source = "typed" | "engine";

export interface Known {
  readonly cylinder: KnownOfCylinder;
  readonly kind: EngineKind;
  /** Absent where the kind was taken from the compression ratio. */
  readonly kindFrom?: Source;
  readonly air: PressureCorrection;
  /** The height that the air was taken from, where it was. */
  readonly altitude?: Length;
  /** By field; what is not in it is assumed. */
  readonly sources: Readonly<Partial<Record<keyof KnownOfCylinder, Source>>>;
}

/** An engine of a logbook, to fill what was not typed. */
export interface FromLogbook {
  readonly record: EngineRecord;
  readonly facts: LogbookFacts;
}

/** Above this ratio an engine of which nothing is said is taken for a diesel. */
const dieselAbove = 14;

/** @throws Stop 2 with every value that cannot be read, or for what is needed and missing */
export const knownOf = (args: Args, book: FromLogbook | undefined): Known => {
  const { typed, faults } = quantitiesTyped(args);
  const ratio = plainTyped(args, "compression-ratio");
  const gamma = args.text("gamma") === "variable" ? undefined : plainTyped(args, "gamma");
  const wrong = [...faults, ...[ratio, gamma].filter(isFault)];
  if (wrong.length > 0) throw new Stop(2, wrong);
  const geometry = book?.record.engine.geometry ?? {};
  const compressionRatio = asNumber(ratio) ?? geometry.compressionRatio;
  if (compressionRatio === undefined) throw ratioMissing(book);
  const { kind, kindFrom } = kindOf(args, book, compressionRatio);
  const { air, altitude } = airOf(typed, book);
  const stated = {
    bore: lengthOf(typed.bore, geometry.bore),
    stroke: lengthOf(typed.stroke, geometry.stroke),
    rod: lengthOf(typed.rod, geometry.rod),
    intakeCloses: made(angle, typed["intake-closes"]) ?? geometry.intakeCloses,
    speed: made(speed, typed.speed) ?? book?.record.engine.compressionLimits.speed,
    leak: made(area, typed["leak-area"]),
    wall: made(temperature, typed.wall),
    start: made(temperature, typed.start),
    airTemperature: made(temperature, typed.air),
    hose: made(volume, typed.hose),
    gamma: asNumber(gamma),
    engine: args.text("engine-temp") as "warm" | "cold" | undefined,
    heat: args.text("heat") as WallHeat | undefined,
  };
  if (book?.record.engine.cycle === "two-stroke" && stated.intakeCloses === undefined) throw portsOpen(book);
  return {
    cylinder: { kind, compressionRatio, airPressure: air.station, ...defined(stated) },
    kind,
    ...(kindFrom === undefined ? {} : { kindFrom }),
    air,
    ...(altitude === undefined ? {} : { altitude }),
    sources: sourcesOf(args, stated, compressionRatio),
  };
};

const isFault = (value: number | Fault | undefined): value is Fault => typeof value === "object";
const asNumber = (value: number | Fault | undefined): number | undefined =>
  typeof value === "number" ? value : undefined;

const made = <T>(make: (si: number) => T, typed: { readonly si: number } | undefined): T | undefined =>
  typed === undefined ? undefined : make(typed.si);
const lengthOf = (typed: { readonly si: number } | undefined, kept: Length | undefined): Length | undefined =>
  made(length, typed) ?? kept;

/** The record without the fields that are not known. */
const defined = <T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };

/** The option of each field that has one of another name. */
export const optionOf: Readonly<Partial<Record<string, string>>> = {
  compressionRatio: "compression-ratio",
  intakeCloses: "intake-closes",
  leak: "leak-area",
  airTemperature: "air",
  airPressure: "station-pressure",
  engine: "engine-temp",
};

const sourcesOf = (args: Args, stated: Readonly<Record<string, unknown>>, ratio: number): Known["sources"] =>
  Object.fromEntries(
    Object.entries<unknown>({ ...stated, compressionRatio: ratio })
      .filter(([, value]) => value !== undefined)
      .map(([field]) => [field, args.text(optionOf[field] ?? field) === undefined ? "engine" : "typed"]),
  );

const kindOf = (
  args: Args,
  book: FromLogbook | undefined,
  ratio: number,
): { readonly kind: EngineKind; readonly kindFrom?: Source } => {
  const stated = (option: string, kept: string | undefined) => ({
    word: args.text(option) ?? kept,
    from: args.text(option) === undefined ? ("engine" as const) : ("typed" as const),
  });
  const ignition = stated("ignition", book?.record.engine.ignition);
  const use = stated("use", book?.record.engine.use);
  const known = ignition.word === "spark" || ignition.word === "compression";
  const diesel = known ? ignition.word === "compression" : ratio > dieselAbove;
  const kind = diesel ? "compression" : use.word === "motorcycle" ? "motorcycle" : "spark";
  return { kind, ...(known ? { kindFrom: ignition.from } : {}) };
};

const airOf = (typed: Typed, book: FromLogbook | undefined): Pick<Known, "air" | "altitude"> => {
  const altitude = lengthOf(typed.altitude, book?.record.engine.homeAltitude ?? book?.facts.homeAltitude);
  const station = made(absolutePressure, typed["station-pressure"]);
  const qnh = made(absolutePressure, typed.qnh);
  if (qnh !== undefined && altitude === undefined && station === undefined)
    throw usage(
      "altitude-missing",
      "--qnh without the height of the place",
      "both: a report is reduced to sea level",
      "add --altitude 350m",
    );
  return {
    air: pressureCorrection(defined({ stationPressure: station, qnh, altitude })),
    ...(altitude === undefined ? {} : { altitude }),
  };
};

const ratioMissing = (book: FromLogbook | undefined): Stop =>
  new Stop(2, [
    usageFault(
      "ratio-missing",
      book === undefined
        ? "no compression ratio, which nothing can stand in for"
        : `${book.record.engine.id} has no compression ratio, which nothing can stand in for`,
      "the ratio from the manual, such as 10 (that is 10:1)",
      book === undefined
        ? "sealtrend expect --compression-ratio 10"
        : `sealtrend engine set ${book.record.engine.id} geometry.compressionRatio 8.5`,
    ),
  ]);

const portsOpen = ({ record: { engine } }: FromLogbook): Stop =>
  usage(
    "intake-closes-missing",
    `${engine.id} is a two-stroke: it traps air from the closing of its exhaust port, which is not known`,
    "crank degrees after bottom dead centre at which that port closes",
    "add --intake-closes 85deg, with its own angle",
  );
