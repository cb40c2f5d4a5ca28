// The air of the day, typed as options: height of the place, barometer, weather report.

import {
  type AirOfTheDay,
  type Length,
  absolutePressure,
  conditionCell,
  conditionColumns,
  length,
  numberColumns,
  toSi,
} from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import { usageFault } from "../usage.ts";

export const airOptions = [
  { name: "altitude", value: "350m", help: "height of the place (default the engine's or the logbook's)" },
  { name: "station-pressure", value: "965hPa", help: "barometer at the place itself" },
  { name: "qnh", value: "1016hPa", help: "sea-level pressure of the weather report, with the altitude" },
] as const;

/** @param home - height where none is typed  @throws Stop 2 for what is no height or pressure */
export const typedAir = (args: Args, home: Length | undefined): AirOfTheDay => {
  const si = (option: string): number | undefined => {
    const typed = args.text(option);
    if (typed === undefined) return undefined;
    const cell = conditionCell(option, typed, conditionColumns);
    if (!cell.ok) throw new Stop(2, [usageFault("condition-bad", cell.found, cell.expected, cell.mend)]);
    const unit = numberColumns[cell.column]?.unit;
    return unit === undefined ? Number(cell.text) : toSi(Number(cell.text), unit);
  };
  const [altitude, station, qnh] = [si("altitude") ?? home, si("station-pressure"), si("qnh")];
  return {
    ...(altitude === undefined ? {} : { altitude: length(altitude) }),
    ...(station === undefined ? {} : { stationPressure: absolutePressure(station) }),
    ...(qnh === undefined ? {} : { qnh: absolutePressure(qnh) }),
  };
};
