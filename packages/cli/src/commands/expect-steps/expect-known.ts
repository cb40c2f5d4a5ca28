// What `expect` knows: what was stated, made quantities of once nothing in it is impossible.

import {
  type EngineKind,
  type KnownOfCylinder,
  type WallHeat,
  angle,
  area,
  expectedFault,
  length,
  speed,
  statedFault,
  temperature,
  volume,
} from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import { usage } from "../usage.ts";
import { type AirMeant, airOf } from "./expect-air.ts";
import { expectFault } from "./expect-fault.ts";
import { type FromLogbook, type Source, type Stated, defined, statedOf } from "./expect-stated.ts";

export interface Known extends AirMeant, Pick<Stated, "sources" | "typed"> {
  readonly cylinder: KnownOfCylinder;
  readonly kind: EngineKind;
  /** Absent where the kind was taken from the compression ratio. */
  readonly kindFrom?: Source;
}

/** Above this ratio an engine of which nothing is said is taken for a diesel. */
const dieselAbove = 14;

/** @throws Stop 2 with every value that cannot be read, or for what is missing, impossible or at odds */
export const knownOf = (args: Args, book: FromLogbook | undefined): Known => {
  const stated = statedOf(args, book);
  const id = book?.record.engine.id;
  const impossible = statedFault(stated.numbers);
  if (impossible !== undefined) throw new Stop(2, [expectFault(impossible, stated, id)]);
  const engine = args.text("engine-temp") as "warm" | "cold" | undefined;
  if (engine === "cold" && stated.typed.wall !== undefined) throw coldAndWall(stated.typed.wall.text);
  if (book?.record.engine.cycle === "two-stroke" && stated.numbers.intakeCloses === undefined)
    throw portsOpen(book);
  const meant = airOf(stated.typed, book);
  const { kind, kindFrom } = kindOf(args, book, stated.numbers.compressionRatio);
  const cylinder = {
    kind,
    airPressure: meant.air.station,
    ...quantities(stated),
    ...defined({ engine, heat: args.text("heat") as WallHeat | undefined }),
  };
  const unfit = expectedFault(cylinder);
  if (unfit !== undefined) throw new Stop(2, [expectFault(unfit, stated, id)]);
  const { sources, typed } = stated;
  return { cylinder, kind, ...(kindFrom === undefined ? {} : { kindFrom }), ...meant, sources, typed };
};

const made = <T>(make: (si: number) => T, si: number | undefined): T | undefined =>
  si === undefined ? undefined : make(si);

const quantities = ({ numbers }: Stated) => ({
  compressionRatio: numbers.compressionRatio,
  ...defined({
    bore: made(length, numbers.bore),
    stroke: made(length, numbers.stroke),
    rod: made(length, numbers.rod),
    intakeCloses: made(angle, numbers.intakeCloses),
    speed: made(speed, numbers.speed),
    leak: made(area, numbers.leak),
    wall: made(temperature, numbers.wall),
    start: made(temperature, numbers.start),
    airTemperature: made(temperature, numbers.airTemperature),
    hose: made(volume, numbers.hose),
    gamma: numbers.gamma,
  }),
});

/** A motorcycle is told by its use; else the ignition counts, and without it the ratio. */
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
  if (ignition.word === "compression") return { kind: "compression", kindFrom: ignition.from };
  if (use.word === "motorcycle") return { kind: "motorcycle", kindFrom: use.from };
  if (ignition.word === "spark") return { kind: "spark", kindFrom: ignition.from };
  return { kind: ratio > dieselAbove ? "compression" : "spark" };
};

const coldAndWall = (wall: string): Stop =>
  usage(
    "cold-and-wall",
    `--engine-temp cold beside --wall ${wall}`,
    "one of them: the walls of a cold engine are as cold as the air",
    "leave --engine-temp or --wall out",
  );

const portsOpen = ({ record: { engine } }: FromLogbook): Stop =>
  usage(
    "intake-closes-missing",
    `${engine.id} is a two-stroke: it traps air from the closing of its exhaust port, which is not known`,
    "crank degrees after bottom dead centre at which that port closes",
    "add --intake-closes 85deg, with its own angle",
  );
