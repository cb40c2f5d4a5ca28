// gauge calibrate: what a gauge reads where the truth is known. Open holes on a leak-down tester; two cranking speeds on a
// compression gauge (gauge-two-speeds.ts).

import {
  type Gauge,
  holeCalibration,
  pressureCorrection,
  readQuantity,
  writeQuantity,
} from "@sealtrend/core/parts";
import { type Answer, type Args, type Command, type Option } from "../command.ts";
import { gaugesDocument } from "../documents/gauges-document.ts";
import { holesDocument } from "../documents/calibration-document.ts";
import type { Io } from "../io.ts";
import { type Logbook, openLogbook } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { write } from "../logbook/write.ts";
import { saidOnce } from "../render/aside.ts";
import { calibrationLines } from "../render/gauges/gauge-calibrate.ts";
import { pressureUnit } from "../render/units.ts";
import { numberText } from "./gauge-steps/gauge-cells.ts";
import { columnsToAdd, gaugeChange, gaugeNamed, gaugesFile } from "./gauge-steps/gauge-row.ts";
import { speedOptions, twoSpeeds } from "./gauge-steps/gauge-two-speeds.ts";
import { holesCell, holesTyped } from "./gauge-steps/hole-words.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { airOptions, typedAir } from "./typed/typed-air.ts";
import { typedWords } from "./typed/typed-words.ts";
import { usage } from "./usage.ts";

const holes = "Open holes of known size on a leak-down tester (a master orifice is one)";
const options: readonly Option[] = [
  {
    name: "hole",
    value: "1.0mm",
    help: "its size; several in pairs with --reads",
    takes: "list",
    group: holes,
  },
  { name: "reads", value: "55psi", help: "what the tester reads with it", takes: "list", group: holes },
  { name: "regulated", value: "80psi", help: "the supply it was set to, kept with the gauge", group: holes },
  ...speedOptions,
  ...airOptions.map((option) => ({ ...option, group: "The place" })),
];

export const gaugeCalibrate: Command = {
  name: "gauge calibrate",
  summary: "check a gauge where the truth is known: on open holes, or on one cylinder at two speeds",
  examples: [
    "sealtrend gauge calibrate cheapo --hole 1.0mm --reads 55psi",
    'sealtrend gauge calibrate cheapo --hole "0.8mm:74psi 1.0mm:66psi 1.25mm:52psi"',
    'sealtrend gauge calibrate red --engine pump --slow 180rpm --slow-reads "171 172 172" --fast 260rpm --fast-reads "190 191 190" --unit psi',
  ],
  enters: true,
  positionals: [{ name: "NAME", help: "the gauge or tester, as gauge list names it", need: "must" }],
  options,
  run: async (args, io) => {
    const logbook = await openLogbook(nodeWorld(io), "write", args.text("logbook"));
    refuseDemo(logbook);
    const way = wayOf(args);
    return way === "holes" ? knownHoles(args, io, logbook) : twoSpeeds(args, io, logbook);
  },
};

/** @throws Stop 2 where neither way of calibrating was typed, or both */
const wayOf = (args: Args): "holes" | "speeds" => {
  const isHoles = [...args.list("hole"), ...args.list("reads")].length > 0;
  const isSpeeds = speedOptions.some(({ name, takes }) =>
    takes === "list" ? args.list(name).length > 0 : args.text(name) !== undefined,
  );
  if (isHoles !== isSpeeds) return isHoles ? "holes" : "speeds";
  const name = args.positionals[0] ?? "red";
  throw usage(
    "calibrate-way",
    isHoles ? "known holes and two speeds in one command" : "nothing to calibrate by",
    "open holes with what the tester read, or one cylinder at two cranking speeds",
    `sealtrend gauge calibrate ${name} --hole 1.0mm --reads 55psi`,
  );
};

const knownHoles = async (args: Args, io: Io, logbook: Logbook): Promise<Answer> => {
  const { world, root } = logbook;
  const gauge = gaugeNamed(logbook, args.positionals[0] ?? "", "leak-down");
  if (gauge.kind !== "leak-down")
    throw usage(
      "gauge-kind",
      `${gauge.id} is a compression gauge`,
      "open holes are read on a leak-down tester",
      `sealtrend gauge calibrate ${gauge.id} --engine ${logbook.ids[0] ?? "pump"} --slow 180rpm --slow-reads "171 172" --fast 260rpm --fast-reads "190 191"`,
    );
  const typed = holesTyped(args, gauge);
  const supply = supplyCell(args, gauge, gaugesFile(logbook));
  const { station } = pressureCorrection(typedAir(args, logbook.facts.homeAltitude));
  const cells = { known_holes: holesCell(gauge, typed), ...supply };
  const command = typedWords(args, "gauge calibrate", gauge.id, options);
  const added = columnsToAdd(logbook, Object.keys(cells));
  const changes = [gaugeChange(logbook, [{ gauge: gauge.id, cells }])];
  const written = await write(world, { root, command, changes, unsaved: command });
  const now = await openLogbook(world, "write", args.text("logbook") ?? root);
  const changed = gaugeNamed(now, gauge.id, "leak-down");
  const found = holeCalibration(changed, station);
  if (found === undefined) throw new TypeError("gauge calibrate: written without holes");
  const unit = pressureUnit(args.text("units"), now.facts, changed.unit);
  const detail = args.flag("why") ? "why" : "short";
  const older =
    gauge.regulated === undefined && supply.regulated !== undefined ? gauge.knownHoles : undefined;
  const said = { gauge: changed, typed, older: older ?? [], found, undo: written.undo };
  const aside = saidOnce([...logbook.asides, ...added, ...written.asides]);
  return {
    exit: 0,
    text: `${calibrationLines(said, { unit, width: io.width, detail }).join("\n")}\n`,
    json: {
      ...gaugesDocument(now.root, [changed], { file: gaugesFile(now), rows: written.files.length }),
      calibration: holesDocument(found),
    },
    ...(aside === "" ? {} : { aside }),
  };
};

/** A supply this near to another is the same: two regulators are not set alike any better. */
const sameSupply = 0.005;

/** The supply typed, in the unit of the dial or with its own. @throws Stop 2 for what is no pressure, or another one than
 *  the tester is set to: older holes, and tests that name no supply, rest on that */
const supplyCell = (
  args: Args,
  { id, unit, regulated }: Gauge,
  file: string,
): Readonly<Record<string, string>> => {
  const typed = args.text("regulated");
  if (typed === undefined) return {};
  const reading = readQuantity(typed, "pressure", unit);
  if (!reading.ok || reading.si <= 0)
    throw usage("gauge-bad", `--regulated "${typed}"`, "a pressure with its unit", "--regulated 80psi");
  if (regulated === undefined)
    return { regulated: numberText(reading.value) + (reading.unit === unit ? "" : reading.unit) };
  if (Math.abs(reading.si / regulated - 1) <= sameSupply) return {};
  const set = writeQuantity(regulated, unit ?? reading.unit);
  throw usage(
    "supply-differs",
    `${id} is set to ${set} in ${file}, and --regulated says ${typed}`,
    "one supply for all holes of a tester, and for the tests that name none of their own",
    `set ${id} to ${set} and read the holes again; if ${set} is wrong, change regulated in ${file} first`,
  );
};
