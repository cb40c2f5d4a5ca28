// A barometer reading held against the height of the place: a report reduced to sea level is often taken for one.

import type { AbsolutePressure, Length } from "../quantity/index.ts";
import { altimeterSetting } from "./standard-atmosphere.ts";

/** Pressures at sea level that weather brings, but for the rarest extremes [Pa]. Common practice, no source. */
const weather = { least: 92_500, most: 105_200 } as const;

/** What a barometer reading would be at sea level, where no weather brings that; undefined where some does.
 *  @param altitude - −2000 to 11 000 m @throws RangeError outside */
export const beyondWeather = (station: AbsolutePressure, altitude: Length): AbsolutePressure | undefined => {
  const sea = altimeterSetting(station, altitude);
  return sea >= weather.least && sea <= weather.most ? undefined : sea;
};
