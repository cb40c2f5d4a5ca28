// The air that `expect` reckons with: the barometer's, the weather report's or the height's, each held against the others.

import {
  type Length,
  type PressureCorrection,
  absolutePressure,
  beyondWeather,
  conditionCell,
  conditionColumns,
  fromSi,
  length,
  pressureAtAltitude,
  pressureCorrection,
  writeQuantity,
} from "@sealtrend/core/parts";
import type { Stop } from "../../command.ts";
import { usage } from "../usage.ts";
import type { Typed } from "./expect-options.ts";
import { type FromLogbook, defined } from "./expect-stated.ts";

export interface AirMeant {
  readonly air: PressureCorrection;
  /** The height of the place, typed or the home of the engine, where there is one. */
  readonly altitude?: Length;
}

/** @throws Stop 2 for a report without a height, and for a barometer reading that no weather brings at its height */
export const airOf = (typed: Typed, book: FromLogbook | undefined): AirMeant => {
  const home = book?.record.engine.homeAltitude ?? book?.facts.homeAltitude;
  const altitude = typed.altitude === undefined ? home : length(typed.altitude.si);
  const station = typed["station-pressure"];
  if (typed.qnh !== undefined && altitude === undefined && station === undefined)
    throw usage(
      "altitude-missing",
      "--qnh without the height of the place",
      "both: a report is reduced to sea level",
      "add --altitude 350m",
    );
  const air = pressureCorrection(
    defined({
      stationPressure: station === undefined ? undefined : absolutePressure(station.si),
      qnh: typed.qnh === undefined ? undefined : absolutePressure(typed.qnh.si),
      altitude,
    }),
  );
  if (station !== undefined && altitude !== undefined) {
    const sea = beyondWeather(air.station, altitude);
    if (sea !== undefined) throw notOfThePlace(typed, station.text, altitude, fromSi(sea, "hPa"));
  }
  return { air, ...(altitude === undefined ? {} : { altitude }) };
};

const notOfThePlace = (typed: Typed, station: string, altitude: Length, sea_hPa: number): Stop => {
  const height =
    typed.altitude?.text ?? `${writeQuantity(altitude, "m")} (its home; --altitude tells another place)`;
  const report = conditionCell("qnh", station, conditionColumns).ok && typed.qnh === undefined;
  const there = writeQuantity(pressureAtAltitude(altitude), "kPa", 1);
  return usage(
    "sea-level-barometer",
    `--station-pressure ${station} at ${height} would be ${sea_hPa.toFixed(0)} hPa at sea level, which no weather brings`,
    `the pressure at the place itself, as a barometer there shows it: about ${there}`,
    report
      ? `--qnh ${station} in place of --station-pressure, if it is of a weather report or an altimeter`
      : "leave --station-pressure out: the height alone will do",
  );
};
