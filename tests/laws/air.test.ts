import {
  aboveVacuum,
  absolutePressure,
  altimeterSetting,
  altitudeAtPressure,
  correctReading,
  densityRatioAtAltitude,
  gaugePressure,
  length,
  pressureAtAltitude,
  pressureCorrection,
  seaLevelPressure,
  stationPressure,
  temperature,
  temperatureAtAltitude,
  temperatureAtPressure,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const height = fc.double({ min: -1_999, max: 10_999, noNaN: true });
const low = fc.double({ min: -500, max: 6_000, noNaN: true });
const weather = fc.double({ min: 87_000, max: 109_000, noNaN: true });
const reading = fc.double({ min: 1, max: 5e6, noNaN: true });

const near = (value: number, expected: number, relative: number): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.max(1, Math.abs(expected)));
};

test("the height of the pressure at a height is that height", () => {
  fc.assert(
    fc.property(height, (h) => {
      near(altitudeAtPressure(pressureAtAltitude(length(h))), h, 1e-9);
      near(temperatureAtPressure(pressureAtAltitude(length(h))), temperatureAtAltitude(length(h)), 1e-12);
    }),
  );
});

test("pressure, density and temperature fall with height", () => {
  fc.assert(
    fc.property(height, fc.double({ min: 0.01, max: 1, noNaN: true }), (h, step) => {
      for (const at of [pressureAtAltitude, densityRatioAtAltitude, temperatureAtAltitude])
        expect(at(length(h + step))).toBeLessThan(at(length(h)));
    }),
  );
});

test("density is pressure over temperature", () => {
  fc.assert(
    fc.property(height, (h) => {
      const ratio =
        pressureAtAltitude(length(h)) / seaLevelPressure / (temperatureAtAltitude(length(h)) / 288.15);
      near(densityRatioAtAltitude(length(h)), ratio, 1e-12);
    }),
  );
});

test("an altimeter setting and the pressure at the place lead back to one another", () => {
  fc.assert(
    fc.property(weather, low, (setting, h) => {
      const station = stationPressure(absolutePressure(setting), length(h));
      near(altimeterSetting(station, length(h)), setting, 1e-11);
    }),
  );
});

test("at sea level the setting is the pressure; a higher setting is a higher pressure, a higher place a lower one", () => {
  fc.assert(
    fc.property(weather, low, (setting, h) => {
      const at = (pressure: number, altitude: number): number =>
        stationPressure(absolutePressure(pressure), length(altitude));
      near(at(setting, 0), setting, 1e-12);
      expect(at(setting + 1, h)).toBeGreaterThan(at(setting, h));
      expect(at(setting, h + 1)).toBeLessThan(at(setting, h));
    }),
  );
});

test("with the standard setting the air at a height is the standard atmosphere's", () => {
  fc.assert(
    fc.property(low, (h) =>
      near(stationPressure(seaLevelPressure, length(h)), pressureAtAltitude(length(h)), 1e-12),
    ),
  );
});

test("air outside −2000 … 11 000 m is a mistake of the caller", () => {
  for (const h of [-2_000.1, 11_000.1, 50_000])
    for (const at of [pressureAtAltitude, densityRatioAtAltitude, temperatureAtAltitude])
      expect(() => at(length(h))).toThrow(RangeError);
  for (const pascals of [22_600, 127_900]) {
    expect(() => altitudeAtPressure(absolutePressure(pascals))).toThrow(RangeError);
    expect(() => temperatureAtPressure(absolutePressure(pascals))).toThrow(RangeError);
  }
  expect(() => stationPressure(seaLevelPressure, length(12_000))).toThrow(RangeError);
});

test("at sea level in standard air a reading is corrected to itself, on either basis", () => {
  fc.assert(
    fc.property(reading, (p) => {
      const air = { stationPressure: seaLevelPressure, airTemperature: temperature(288.15) };
      for (const basis of ["pressure", "density"] as const)
        expect(correctReading(gaugePressure(p), pressureCorrection(air, basis))).toBe(p);
    }),
  );
});

test("a reading taken to a height and back to the sea is the same reading", () => {
  fc.assert(
    fc.property(reading, low, (p, h) => {
      const { factor } = pressureCorrection({ altitude: length(h) });
      near(correctReading(gaugePressure(p / factor), pressureCorrection({ altitude: length(h) })), p, 1e-12);
    }),
  );
});

test("the correction scales: twice the reading is twice the corrected reading, and no reading stays none", () => {
  fc.assert(
    fc.property(reading, weather, (p, station) => {
      const correction = pressureCorrection({ stationPressure: absolutePressure(station) });
      expect(correctReading(gaugePressure(2 * p), correction)).toBe(
        2 * correctReading(gaugePressure(p), correction),
      );
      expect(correctReading(gaugePressure(0), correction)).toBe(0);
    }),
  );
});

test("gauge plus air over air is the same engine before and after", () => {
  fc.assert(
    fc.property(reading, weather, (p, station) => {
      const corrected = correctReading(
        gaugePressure(p),
        pressureCorrection({ stationPressure: absolutePressure(station) }),
      );
      near(aboveVacuum(corrected, seaLevelPressure) / seaLevelPressure, (p + station) / station, 1e-12);
    }),
  );
});
