// Properties of dry air that change with temperature: heat capacity, viscosity, conductivity. Plain numbers, SI.

/** Ratio of specific heats of air as an ideal gas. c_p/R = 3.653 − 1.337e-3 T + 3.294e-6 T² − 1.913e-9 T³ + 0.2763e-12 T⁴,
 *  γ = (c_p/R)/(c_p/R − 1).
 *  @param kelvins - fitted 300 to 1000 K, held still below 200 and above 1200 K  @source Moran & Shapiro, table of ideal-gas heat
 *  capacities, from memory  @checked tests/published/cranking-model.test.ts */
export const gammaOfAir = (kelvins: number): number => {
  const t = Math.min(Math.max(kelvins, 200), 1200);
  const cp = 3.653 + t * (-1.337e-3 + t * (3.294e-6 + t * (-1.913e-9 + t * 0.2763e-12)));
  return cp / (cp - 1);
};

/** Dynamic viscosity of air [Pa s]. μ = 1.458e-6 T^1.5/(T + 110.4)  @source US Standard Atmosphere 1976, from memory */
export const viscosityOfAir = (kelvins: number): number =>
  (1.458e-6 * kelvins * Math.sqrt(kelvins)) / (kelvins + 110.4);

/** Thermal conductivity of air [W/(m K)]. k = 2.64638e-3 T^1.5/(T + 245.4 · 10^(−12/T))
 *  @source US Standard Atmosphere 1976, from memory */
export const conductivityOfAir = (kelvins: number): number =>
  (2.64638e-3 * kelvins * Math.sqrt(kelvins)) / (kelvins + 245.4 * 10 ** (-12 / kelvins));
