// What a cranking speed that was not brought to the reference speed may do to a reading.

/** Standard uncertainty of ln P where the cranking speed is not corrected: N_s/(N + N_s/2) · 0.16, with the loss speed
 *  N_s = 70 rpm (spark) or 90 rpm (diesel) and N = 250 rpm known to 40 rpm.
 *  @source cycle model of the handbook (computed, no published figure) */
export const speedDoubt = (ignition: "spark" | "compression" | "unknown"): number => {
  const lossSpeed = ignition === "compression" ? 90 : 70;
  return (lossSpeed / (250 + lossSpeed / 2)) * 0.16;
};
