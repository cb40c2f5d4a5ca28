// gauge calibrate at two cranking speeds: what an engine would read on this gauge without losses, kept in engine.json.

import {
  type Gauge,
  type PressureUnit,
  type SpeedReadings,
  fromSi,
  gaugePressure,
  gaugeUnits,
  pressureCorrection,
  readEngine,
  readQuantity,
  speed,
  speedCalibration,
  trueReading,
  writeQuantity,
} from "@sealtrend/core/parts";
import type { Answer, Args, Option } from "../../command.ts";
import { speedsDocument } from "../../documents/calibration-document.ts";
import { gaugesDocument } from "../../documents/gauges-document.ts";
import type { Io } from "../../io.ts";
import { withField } from "../../logbook/edit-json.ts";
import { type Logbook, engineFiles, pickEngine, stopOnErrors } from "../../logbook/open-logbook.ts";
import { write } from "../../logbook/write.ts";
import { saidOnce } from "../../render/aside.ts";
import { speedLines, speedRefusalWords } from "../../render/gauges/speed-calibration.ts";
import { pressureUnit } from "../../render/units.ts";
import { gaugeNamed } from "./gauge-row.ts";
import { airOptions, typedAir } from "../typed/typed-air.ts";
import { typedDay } from "../typed/typed-day.ts";
import { typedWords } from "../typed/typed-words.ts";
import { usage } from "../usage.ts";

const group = "One cylinder at two cranking speeds, 1.25 times apart, three readings each";
export const speedOptions: readonly Option[] = [
  { name: "engine", value: "ENGINE", help: "the engine it was read on", group },
  { name: "slow", value: "180rpm", help: "the lower speed, measured", group },
  {
    name: "slow-reads",
    value: "LIST",
    example: '"171 172 172"',
    help: "the readings at it",
    takes: "list",
    group,
  },
  { name: "fast", value: "260rpm", help: "the higher speed", group },
  {
    name: "fast-reads",
    value: "LIST",
    example: '"190 191 190"',
    help: "the readings at it",
    takes: "list",
    group,
  },
  {
    name: "unit",
    value: "UNIT",
    help: "unit of the readings (default the gauge's)",
    choices: gaugeUnits,
    group,
  },
  { name: "date", value: "DATE", help: "the day (default today)", group },
];

/** @throws Stop 1 where the readings cannot tell, 2 for what was typed */
export const twoSpeeds = async (args: Args, io: Io, logbook: Logbook): Promise<Answer> => {
  const gauge = gaugeNamed(logbook, args.positionals[0] ?? "", "compression");
  if (gauge.kind !== "compression")
    throw usage(
      "gauge-kind",
      `${gauge.id} is a leak-down tester`,
      "a compression gauge, read at two cranking speeds",
      `sealtrend gauge calibrate ${gauge.id} --hole 1.0mm --reads 55psi`,
    );
  const { world, root } = logbook;
  const id = pickEngine(logbook, args.text("engine"));
  const file = engineFiles(logbook, id).engine;
  const { engine, problems } = readEngine(file.text, file.file, id);
  stopOnErrors(problems);
  if (engine === undefined) throw new TypeError(`gauge calibrate: ${id} has no engine and no fault`);
  const day = typedDay(args, io, "the test") ?? io.today;
  const unit = unitTyped(args, gauge);
  const readings = { slow: atSpeed(args, "slow", unit, gauge), fast: atSpeed(args, "fast", unit, gauge) };
  const correction = pressureCorrection(typedAir(args, engine.homeAltitude ?? logbook.facts.homeAltitude));
  const outcome = speedCalibration({ engine, gauge }, readings, correction);
  if ("refused" in outcome) {
    const typed = { slow: args.list("slow-reads").join(" "), fast: args.list("fast-reads").join(" ") };
    const { code, found, expected, mend } = speedRefusalWords(outcome.refused, unit, typed);
    throw usage(code, found, expected, mend, 1);
  }
  const entry = {
    gauge: gauge.id,
    P0: `${String(Number(fromSi(outcome.P0, "kPa").toPrecision(5)))}kPa`,
    u_ln: Number(outcome.uncertainty.toPrecision(3)),
    source: `two speeds, ${day}`,
  };
  const command = typedWords(args, "gauge calibrate", gauge.id, [...speedOptions, ...airOptions]);
  const changed = (text: string): string => {
    const after = withField(text, "crankingCurve", [...otherEntries(text, gauge.id), entry]);
    if (after === undefined) throw new TypeError("gauge calibrate: engine.json is no object");
    stopOnErrors(readEngine(after, file.file, id).problems);
    return after;
  };
  const written = await write(world, {
    root,
    command,
    unsaved: command,
    changes: [{ kind: "replace", path: `${id}/engine.json`, text: ({ text }) => changed(text) }],
  });
  const aside = saidOnce([...logbook.asides, ...written.asides]);
  const said = {
    engine: id,
    gauge: gauge.id,
    ...outcome,
    takes: { slow: readings.slow.readings.length, fast: readings.fast.readings.length },
    from: correction.from,
    air: correction,
    undo: written.undo,
  };
  const shownIn = pressureUnit(args.text("units"), logbook.facts, unit);
  return {
    exit: 0,
    text: `${speedLines(said, { unit: shownIn, width: io.width, detail: args.flag("why") ? "why" : "short" }).join("\n")}\n`,
    json: {
      ...gaugesDocument(logbook.root, [gauge], { file: file.file, rows: written.files.length }),
      calibration: speedsDocument({ ...said, source: entry.source, correction }),
    },
    ...(aside === "" ? {} : { aside }),
  };
};

/** The entries of other gauges, as they stand. */
const otherEntries = (text: string, gauge: string): readonly unknown[] => {
  const { crankingCurve } = JSON.parse(text) as { readonly crankingCurve?: unknown };
  const entries: readonly unknown[] = Array.isArray(crankingCurve) ? crankingCurve : [];
  return entries.filter((entry) => (entry as { readonly gauge?: unknown }).gauge !== gauge);
};

const unitTyped = (args: Args, gauge: Gauge): PressureUnit => {
  const typed = args.text("unit");
  const unit = gaugeUnits.find((name) => name === typed) ?? gauge.unit;
  if (unit !== undefined) return unit;
  throw usage("unit-missing", "the readings: in which unit?", gaugeUnits.join(", "), "--unit psi");
};

/** What a conversion of units may add to a figure that is the same. */
const hair = 1 + 1e-4;

/** @throws Stop 2 for what is no speed, or for readings that are none */
const atSpeed = (args: Args, option: "slow" | "fast", unit: PressureUnit, gauge: Gauge): SpeedReadings => {
  const typed = args.text(option);
  const turning = readQuantity(typed ?? "", "speed", "rpm");
  const example = { slow: "180rpm", fast: "260rpm" }[option];
  if (!turning.ok || turning.si <= 0)
    throw usage(
      "speed-missing",
      typed === undefined ? `no --${option}` : `--${option} "${typed}"`,
      "a cranking speed that was measured, with rpm",
      `--${option} ${example}`,
    );
  const words = args.list(`${option}-reads`).flatMap((use) => use.split(/\s+/));
  const read = words.map((word) => ({ word, reading: readQuantity(word, "pressure", unit) }));
  const bad = read.find(({ reading }) => !reading.ok || trueReading(reading.si, gauge.readsHigh ?? 0) <= 0);
  if (bad !== undefined || read.length === 0)
    throw usage(
      "reads-missing",
      bad === undefined ? `no --${option}-reads` : `--${option}-reads "${bad.word}"`,
      `the readings of one cylinder at ${typed ?? example}, in ${unit}`,
      `--${option}-reads "171 172 172"`,
    );
  const over = read.find(({ reading }) => reading.ok && reading.si > (gauge.fullScale ?? Infinity) * hair);
  if (over !== undefined)
    throw usage(
      "reads-over",
      `--${option}-reads ${over.word} is more than ${gauge.id} can show (${writeQuantity(gauge.fullScale ?? 0, unit)})`,
      "a reading within the dial",
      `check the reading and its unit: --${option}-reads`,
    );
  return {
    speed: speed(turning.si),
    readings: read.flatMap(({ reading }) => (reading.ok ? [gaugePressure(reading.si)] : [])),
  };
};
