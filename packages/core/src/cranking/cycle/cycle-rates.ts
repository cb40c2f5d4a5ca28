// The first law for the gas above the piston: how fast its mass and temperature change at one crank angle. Plain numbers in
// SI; nothing here makes an object once an engine is set up.

import type { AbsolutePressure, Angle, Area, Speed, Temperature, Volume } from "../../quantity/index.ts";
import { flowFunctionOfDrop, gasConstant } from "../../air/index.ts";
import { type Cylinder, clearanceVolume, closingAngle, volumeAt } from "./cylinder.ts";
import { gammaOfAir } from "./gas.ts";
import { type WallHeat, heatTransfer } from "./wall-heat.ts";

/** Everything the model needs; nothing is assumed here. */
export interface CycleInput {
  readonly cylinder: Cylinder;
  /** Of the crank after bottom dead centre. */
  readonly intakeCloses: Angle;
  readonly speed: Speed;
  /** In the cylinder at intake closing, and beyond the leak. */
  readonly air: AbsolutePressure;
  /** Of the gas at intake closing, and of what flows in where the cylinder is below the air's pressure. */
  readonly start: Temperature;
  readonly wall: Temperature;
  /** Effective, Cd·A. */
  readonly leak: Area;
  readonly heat: WallHeat;
  /** The coefficient of the correlation times this. */
  readonly heatFactor: number;
  /** Of the gas and of the leak: with temperature, or one number above 1. */
  readonly gamma: "variable" | number;
  /** Ahead of the check valve, so part of the chamber. */
  readonly hose: Volume;
}

/** What `rates` leaves behind: slopes by the crank angle [1/deg, K/deg] and the pressure [Pa]. */
export interface Slopes {
  mass: number;
  kelvins: number;
  pressure: number;
}

/** Writes the slopes at a crank angle [deg from top dead centre] for a mass (1 at intake closing) and a temperature [K]. */
export type Rates = (theta: number, mass: number, kelvins: number, out: Slopes) => void;

/** The rates of one engine at one crank angle, as a function that makes no objects. */
export const ratesOf = (input: CycleInput): Rates => {
  const { cylinder, air, wall, leak, heat, heatFactor, gamma, hose, start } = input;
  const { bore, stroke, rod } = cylinder;
  const throwLength = stroke / 2;
  const piston = (Math.PI / 4) * bore * bore;
  const clearance = clearanceVolume(cylinder) + hose;
  const degree = Math.PI / 180;
  /** Crank degrees a second. */
  const turning = 6 * input.speed;
  const startVolume = volumeAt(cylinder, closingAngle(input.intakeCloses)) + hose;
  /** m0 · R, so that p = fraction · this · T / V. */
  const gas = (air * startVolume) / start;
  const transfer = heatTransfer(heat, bore, (2 * stroke * input.speed) / 60);
  const fixed = gamma === "variable" ? undefined : gamma;
  return (theta: number, mass: number, kelvins: number, out: Slopes): void => {
    const sine = Math.sin(theta * degree);
    const cosine = Math.cos(theta * degree);
    const shank = Math.sqrt(rod * rod - throwLength * throwLength * sine * sine);
    const travel = throwLength * (1 - cosine) + rod - shank;
    const volume = clearance + piston * travel;
    const swelling = piston * throwLength * sine * (1 + (throwLength * cosine) / shank) * degree;
    const pressure = (mass * gas * kelvins) / volume;
    const g = fixed ?? gammaOfAir(kelvins);
    const capacity = (mass * gas) / (g - 1);
    const walls = 2 * piston + Math.PI * bore * travel;
    const warming =
      heatFactor === 0 ? 0 : heatFactor * transfer(pressure, kelvins, volume) * walls * (wall - kelvins);
    // W that the flow through the leak adds to the gas, and its mass [1/s]; out of the cylinder both are negative.
    let carried: number;
    let gained: number;
    if (pressure >= air) {
      const flow = flowFunctionOfDrop((pressure - air) / pressure, g);
      carried = -(leak * pressure * flow * Math.sqrt(gasConstant * kelvins));
      gained = carried / (gas * kelvins);
    } else {
      const flow = flowFunctionOfDrop((air - pressure) / air, fixed ?? gammaOfAir(start));
      const between = fixed ?? gammaOfAir((kelvins + start) / 2);
      const work = leak * air * flow * Math.sqrt(gasConstant * start);
      gained = work / (gas * start);
      carried = gained * gas * ((between / (between - 1)) * (start - kelvins) + kelvins);
    }
    out.pressure = pressure;
    out.mass = gained / turning;
    out.kelvins = (-pressure * swelling + (warming + carried) / turning) / capacity;
  };
};
