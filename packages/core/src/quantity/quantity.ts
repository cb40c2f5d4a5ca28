// Branded SI quantities. A number gets its meaning here, at the edge, and keeps it inside.

declare const meaning: unique symbol;

/** A number in the SI unit (or the trade unit named) that U spells out. */
export type Quantity<U extends string> = number & { readonly [meaning]: U };

/** Pressure above vacuum [Pa]. */
export type AbsolutePressure = Quantity<"Pa abs">;
/** Pressure above the air around the gauge [Pa]. */
export type GaugePressure = Quantity<"Pa gauge">;
/** Thermodynamic temperature [K]. */
export type Temperature = Quantity<"K">;
/** Length, also height above sea level [m]. */
export type Length = Quantity<"m">;
/** Rotational speed, kept in revolutions a minute as the trade does [rpm]. */
export type Speed = Quantity<"rpm">;
/** Volume [m3]. */
export type Volume = Quantity<"m3">;
/** Area, also the effective area Cd·A of a leak [m2]. */
export type Area = Quantity<"m2">;
/** Force, as a spring bears it [N]. */
export type Force = Quantity<"N">;
/** Crank angle, kept in degrees as the trade does [deg]. */
export type Angle = Quantity<"deg">;

interface Range {
  readonly name: string;
  readonly unit: string;
  readonly above?: number;
  readonly least?: number;
  readonly most?: number;
}

const checked = (value: number, { name, unit, above, least, most }: Range): number => {
  if (!Number.isFinite(value)) throw new RangeError(`${name}: must be a finite number, got ${String(value)}`);
  if (above !== undefined && value <= above)
    throw new RangeError(`${name}: must be above ${String(above)} ${unit}, got ${String(value)}`);
  if (least !== undefined && value < least)
    throw new RangeError(`${name}: must be at least ${String(least)} ${unit}, got ${String(value)}`);
  if (most !== undefined && value > most)
    throw new RangeError(`${name}: must be at most ${String(most)} ${unit}, got ${String(value)}`);
  return value;
};

/** Each made once: a fleet of engines brands millions of readings. */
const ranges = {
  absolutePressure: { name: "absolute pressure", unit: "Pa", above: 0 },
  gaugePressure: { name: "gauge pressure", unit: "Pa", least: -110_000 },
  temperature: { name: "temperature", unit: "K", above: 0 },
  length: { name: "length", unit: "m" },
  speed: { name: "speed", unit: "rpm", least: 0 },
  volume: { name: "volume", unit: "m3", least: 0 },
  area: { name: "area", unit: "m2", least: 0 },
  angle: { name: "angle", unit: "deg" },
  force: { name: "force", unit: "N", least: 0 },
} as const satisfies Record<string, Range>;

/** Makes a pressure above vacuum from pascals. @param pascals - above 0 @throws RangeError outside */
export const absolutePressure = (pascals: number): AbsolutePressure =>
  checked(pascals, ranges.absolutePressure) as AbsolutePressure;

/** Makes a pressure above the air around the gauge from pascals.
 *  @param pascals - above the surrounding air; 0 and slightly negative are allowed @throws RangeError below -110 kPa */
export const gaugePressure = (pascals: number): GaugePressure =>
  checked(pascals, ranges.gaugePressure) as GaugePressure;

/** A gauge reading as a pressure above vacuum: reading + air around the gauge. @throws RangeError where that is not above 0 */
export const aboveVacuum = (reading: GaugePressure, air: AbsolutePressure): AbsolutePressure =>
  absolutePressure(Number(reading) + air);

/** Makes a thermodynamic temperature from kelvins. @param kelvins - above 0 @throws RangeError outside */
export const temperature = (kelvins: number): Temperature =>
  checked(kelvins, ranges.temperature) as Temperature;

/** Makes a length, or a height above sea level, from metres.
 *  @param metres - any finite number @throws RangeError if not finite */
export const length = (metres: number): Length => checked(metres, ranges.length) as Length;

/** Makes a rotational speed from revolutions a minute. @param rpm - 0 or more @throws RangeError outside */
export const speed = (rpm: number): Speed => checked(rpm, ranges.speed) as Speed;

/** Makes a volume from cubic metres. @param cubicMetres - 0 or more @throws RangeError outside */
export const volume = (cubicMetres: number): Volume => checked(cubicMetres, ranges.volume) as Volume;

/** Makes an area from square metres. @param squareMetres - 0 or more @throws RangeError outside */
export const area = (squareMetres: number): Area => checked(squareMetres, ranges.area) as Area;

/** Makes a crank angle from degrees. @param degrees - any finite number @throws RangeError if not finite */
export const angle = (degrees: number): Angle => checked(degrees, ranges.angle) as Angle;

/** Makes a force from newtons. @param newtons - 0 or more @throws RangeError outside */
export const force = (newtons: number): Force => checked(newtons, ranges.force) as Force;
