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

/** @param pascals - above 0 @throws RangeError outside */
export const absolutePressure = (pascals: number): AbsolutePressure =>
  checked(pascals, { name: "absolute pressure", unit: "Pa", above: 0 }) as AbsolutePressure;

/** @param pascals - above the surrounding air; 0 and slightly negative are allowed @throws RangeError below -110 kPa */
export const gaugePressure = (pascals: number): GaugePressure =>
  checked(pascals, { name: "gauge pressure", unit: "Pa", least: -110_000 }) as GaugePressure;

/** @param kelvins - above 0 @throws RangeError outside */
export const temperature = (kelvins: number): Temperature =>
  checked(kelvins, { name: "temperature", unit: "K", above: 0 }) as Temperature;

/** @param metres - any finite number @throws RangeError if not finite */
export const length = (metres: number): Length => checked(metres, { name: "length", unit: "m" }) as Length;

/** @param rpm - 0 or more @throws RangeError outside */
export const speed = (rpm: number): Speed => checked(rpm, { name: "speed", unit: "rpm", least: 0 }) as Speed;

/** @param cubicMetres - 0 or more @throws RangeError outside */
export const volume = (cubicMetres: number): Volume =>
  checked(cubicMetres, { name: "volume", unit: "m3", least: 0 }) as Volume;

/** @param squareMetres - 0 or more @throws RangeError outside */
export const area = (squareMetres: number): Area =>
  checked(squareMetres, { name: "area", unit: "m2", least: 0 }) as Area;

/** @param degrees - any finite number @throws RangeError if not finite */
export const angle = (degrees: number): Angle => checked(degrees, { name: "angle", unit: "deg" }) as Angle;

/** @param newtons - 0 or more @throws RangeError outside */
export const force = (newtons: number): Force =>
  checked(newtons, { name: "force", unit: "N", least: 0 }) as Force;
