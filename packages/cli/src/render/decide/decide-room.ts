// How much is said: everything, and step by step less until the screen fits a terminal.

export interface Room {
  /** Lines of evidence that are told, findings of one line, and places they came from. */
  readonly groups: number;
  readonly texts: number;
  readonly places: number;
  /** How much is told of what nobody looked at. */
  readonly unseen: number;
  /** Of the other fault, with its words and date or without; what no reading shows is always told whole. */
  readonly blind: "full" | "brief";
  readonly guards: number;
  readonly flips: number;
  /** What measurements are held to. */
  readonly limits: number;
  /** What to measure: in full, by its name, or how long alone. */
  readonly measure: "full" | "brief" | "minutes";
  /** Where what is assumed is kept on record. */
  readonly kept: "said" | "left-out";
  readonly blank: "between" | "after-reason" | "none";
}

export const everything: Room = {
  groups: Infinity,
  texts: Infinity,
  places: Infinity,
  unseen: Infinity,
  blind: "full",
  guards: Infinity,
  flips: 3,
  limits: Infinity,
  measure: "full",
  kept: "said",
  blank: "between",
};

/** What is given up, in this order; each keeps what was given up before it. */
const steps: readonly Partial<Room>[] = [
  { groups: 5, texts: 2, places: 2, unseen: 8, limits: 4 },
  { measure: "brief" },
  { blank: "after-reason" },
  { unseen: 5 },
  { groups: 3 },
  { unseen: 3 },
  { texts: 1, limits: 2 },
  { flips: 2, guards: 2 },
  { groups: 2 },
  { kept: "left-out", places: 1 },
  { blank: "none" },
  { blind: "brief" },
  { groups: 1, unseen: 2, guards: 1 },
  { limits: 0 },
  { unseen: 1, flips: 1 },
  { measure: "minutes" },
];

/** From roomy to the least. */
export const rooms: readonly Room[] = steps.map((_, last) =>
  steps.slice(0, last + 1).reduce<Room>((room, step) => ({ ...room, ...step }), everything),
);
