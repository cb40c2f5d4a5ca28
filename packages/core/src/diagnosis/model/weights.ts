// Findings that lean on one another count for less together: two of a kind for 1.5, three for 1.8.

/** The power of each of k findings of one kind: 1/(1 + (k−1)·r), the design effect of equally correlated findings.
 *  @param shared - r, 0 … 1 @source handbook/diagnosis.md 4; r is judgement */
export const weightAmong = (k: number, shared: number): number => 1 / (1 + (k - 1) * shared);
