// The sizes of the alarm rule, in one place: the alarm itself and the plan of further tests go by the same.

/** One-sided chance at which each part raises the alarm on a healthy cylinder; shared among the cylinders compared.
 *  @source handbook/statistics.md C.4 (choices, tuned by simulation) */
export const alarmChance = { slope: 0.001, lastTwo: 0.01 } as const;

/** Degrees of freedom at most that the scatter of the whole engine weighs beside a cylinder's own.
 *  @source handbook/statistics.md L.8 (a choice) */
export const sharedDegrees = 24;

/** Variance of the larger of two standard normal values, 1 - 1/pi to the two digits of the rule.
 *  @source handbook/statistics.md C.4 */
export const varianceOfLarger = 0.68;
