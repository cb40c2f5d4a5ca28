// What engine.json says of money and of how long the engine will be owned. Money is in one unit of the user's own.

/** Opening and closing, with gaskets and fluids. */
export type PricedJob = "headOff" | "bottomOpen" | "engineOut";
/** The work inside: parts, machining, labour. */
export type PricedWork = "topEnd" | "reRing" | "rebuild";

type ByWork = Readonly<Partial<Record<PricedWork, number>>>;

/** 0 or more each; what nobody stated is absent. */
export interface EnginePrices {
  /** For printing only. */
  readonly currency?: string;
  readonly jobs: Readonly<Partial<Record<PricedJob, number>>>;
  readonly work: ByWork;
  /** Days out of use when done at once, and when done later. */
  readonly daysNow: ByWork;
  readonly daysLater: ByWork;
  /** Of a day out of use. */
  readonly day?: number;
  /** Of one test of the usual kind. */
  readonly test?: number;
  /** Of running it as it is: oil, fuel. */
  readonly runningPerYear?: number;
  /** What the work adds to the price of the engine at the end. */
  readonly resale: ByWork;
  /** Of another engine in its place. */
  readonly replacement?: number;
  /** Chances, 0 to 1: that the work does not hold; that waiting turns a re-ring into a rebuild; that watching catches it. */
  readonly redo: ByWork;
  readonly spoil?: number;
  readonly caught?: number;
}

/** One price or chance as a path below `prices`: `work.reRing`. */
export interface TypedPrice {
  readonly path: string;
  readonly value: number;
}

/** How long the engine will still be owned. */
export type OwnedFor = { readonly kind: "years"; readonly years: number } | { readonly kind: "for-good" };
