// Steady flow of air through a hole, as the textbooks give it: isentropic, choked or not, with a discharge coefficient.
// mass flow = Cd·A · p_up · psi(p_down/p_up) / sqrt(R·T_up), pressures above vacuum.

/** Specific gas constant of dry air [J/(kg K)]. */
export const gasConstant = 287.05;
/** Ratio of specific heats of air at room temperature. */
export const airGamma = 1.4;

/** The pressure ratio at and below which the flow is choked. r_c = (2/(g+1))^(g/(g-1)), 0.528 for air.
 *  @param gamma - above 1 @source isentropic flow, any textbook of gas dynamics @checked tests/published/orifice-flow.test.ts */
export const criticalRatio = (gamma = airGamma): number => (2 / (gamma + 1)) ** (gamma / (gamma - 1));

/** psi of choked flow, 0.6847 for air. @param gamma - above 1 */
export const chokedFlow = (gamma = airGamma): number =>
  Math.sqrt(gamma) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));

/** The flow function psi of r = p_down/p_up, by the drop x = 1 - r so that it keeps its digits where the drop is small.
 *  @param drop - (p_up - p_down)/p_up, clamped to 0 … 1: nothing flows uphill
 *  @param gamma - above 1 @source isentropic flow, any textbook of gas dynamics */
export const flowFunctionOfDrop = (drop: number, gamma = airGamma): number => {
  if (!(drop > 0)) return 0;
  if (1 - drop <= criticalRatio(gamma)) return chokedFlow(gamma);
  const lnRatio = Math.log1p(-drop);
  const head = -Math.expm1(((gamma - 1) / gamma) * lnRatio);
  return Math.sqrt(((2 * gamma) / (gamma - 1)) * Math.exp((2 / gamma) * lnRatio) * head);
};

/** The flow function psi of r = p_down/p_up. @param ratio - 0 … 1 @param gamma - above 1 */
export const flowFunction = (ratio: number, gamma = airGamma): number => flowFunctionOfDrop(1 - ratio, gamma);
