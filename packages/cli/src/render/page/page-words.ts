// Small texts that several sections share: free text kept short, the engine in a line, facts of a day.

import {
  type Conditions,
  type Engine,
  type PressureUnit,
  fromSi,
  writeNumber,
  writeQuantity,
} from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import { count, counted, sentence } from "../words.ts";

const longest = 400;

/** Somebody's free text; a novel is cut. */
export const kept = (text: string | undefined): string => {
  const said = (text ?? "").replace(/\s+/g, " ").trim();
  return [...said].length > longest ? `${[...said].slice(0, longest).join("")}…` : said;
};

const ignitions: Readonly<Record<Engine["ignition"], string>> = {
  spark: "spark ignition",
  compression: "compression ignition",
  unknown: "ignition not recorded",
};

/** `4 cylinders, four-stroke, spark ignition; bore 95 mm, stroke 100 mm, ratio 7`. */
export const engineLine = ({ cylinders, cycle, ignition, cooling, geometry }: Engine): string => {
  const { bore, stroke, compressionRatio } = geometry;
  const sizes = [
    ...(bore === undefined ? [] : [`bore ${plain(fromSi(bore, "mm"))} mm`]),
    ...(stroke === undefined ? [] : [`stroke ${plain(fromSi(stroke, "mm"))} mm`]),
    ...(compressionRatio === undefined ? [] : [`compression ratio ${plain(compressionRatio)}`]),
  ];
  const kind = [
    counted(cylinders.length, "cylinder"),
    cycle,
    ignitions[ignition],
    ...(cooling === undefined ? [] : [`${cooling} cooled`]),
  ];
  return [kind.join(", "), sizes.join(", ")].filter((text) => text !== "").join("; ");
};

const plain = (value: number): string => String(Number(value.toPrecision(6)));

/** What is under the title of every page. */
export const underTitle = ({ record: { engine, tests }, data, dated }: PageInput): readonly string[] => {
  const [first, last] = [tests[0]?.date, tests.at(-1)?.date];
  const span =
    first === undefined || last === undefined
      ? "no test yet"
      : `${count(tests.length)} test${tests.length === 1 ? "" : "s"}, ${first === last ? first : `${first} to ${last}`}`;
  return [
    ...(data === "invented" ? ["INVENTED DATA: a demonstration; there is no such engine."] : []),
    `${engine.id}: ${engineLine(engine)}. ${sentence(span)}; ${dated}.`,
  ];
};

export const meterText = (meter: number | undefined, { meter: unit }: Engine): string =>
  meter === undefined ? "" : `${plain(meter)}${unit === undefined ? "" : ` ${unit}`}`;

/** Who it was, for who reads it: to others "me" is the owner, and the seller is not who sells it now. */
export const whoText = (by: string | undefined, { reader }: Pick<PageInput, "reader">): string => {
  const said = kept(by);
  if (reader === "owner") return said;
  if (/^me$/i.test(said)) return "the owner";
  return /^seller$/i.test(said) ? "an earlier seller" : said;
};

/** What was recorded of a day, a phrase each, in one order. @param unit - of pressures, as they were read */
export const conditionTexts = (conditions: Conditions, unit: PressureUnit): readonly string[] => {
  const { altitude, altitudeFrom, stationPressure, qnh, airTemperature, crankSpeed, crankVolts, strokes } =
    conditions;
  const { engineTemp, engineTemperature, throttle, plugsOut, release, regulated, master, masterLost } =
    conditions;
  const texts: readonly (string | undefined)[] = [
    altitude === undefined
      ? undefined
      : `${writeQuantity(altitude, "m")}${altitudeFrom === "test" ? "" : " (home)"}`,
    stationPressure === undefined ? undefined : `barometer ${writeNumber(stationPressure, "hPa", 0)} hPa`,
    qnh === undefined ? undefined : `weather report ${writeNumber(qnh, "hPa", 0)} hPa`,
    airTemperature === undefined ? undefined : `air ${writeNumber(airTemperature, "C", 0)} °C`,
    crankSpeed === undefined ? undefined : `${crankSpeed.toFixed(0)} rpm`,
    crankVolts === undefined ? undefined : `${plain(crankVolts)} V`,
    strokes === undefined ? undefined : `${String(strokes)} strokes`,
    engineTemp,
    engineTemperature === undefined ? undefined : `engine ${writeNumber(engineTemperature, "C", 0)} °C`,
    throttle === undefined ? undefined : `throttle ${throttle}`,
    plugsOut === undefined ? undefined : `${plugsOut === "all" ? "all plugs" : "one plug"} out`,
    release === undefined ? undefined : `release ${release}`,
    regulated === undefined ? undefined : `supply ${pressureText(regulated, unit)}`,
    master === undefined ? undefined : `master ${pressureText(master, unit)}`,
    masterLost === undefined ? undefined : `master ${plain(masterLost * 100)} % lost`,
  ];
  return texts.flatMap((text) => text ?? []);
};

/** `80 psi`, `5.5 bar`. */
export const pressureText = (pressure: number, unit: PressureUnit): string => {
  const shown = fromSi(pressure, unit);
  return `${plain(Number(shown.toFixed(shown < 20 ? 2 : 0)))} ${unit}`;
};

/** Its name, or its id where it has none. */
export const engineTitle = ({ name, id }: Engine): string => kept(name) || id;
