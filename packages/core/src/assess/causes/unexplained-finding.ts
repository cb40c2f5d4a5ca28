// A finding that no sound cylinder gives, on one whose likeliest cause is none.

/** A finding that no sound cylinder gives, on a cylinder whose likeliest cause is none. Fractions. */
export interface Unexplained {
  readonly label: string;
  readonly finding: "air-in-coolant" | "leak-heard-nowhere" | "leak-heard" | "running-low" | "oil-rise";
  /** Leak: the part lost. Running: the lower of running and snap reading, over the middle of its fellows. Oil: with oil/dry - 1. */
  readonly own?: number;
  /** The middle of its fellows; absent where none was read. */
  readonly others?: number;
}
