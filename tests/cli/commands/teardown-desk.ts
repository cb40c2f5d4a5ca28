// An inline six taken apart, with limits and offered sizes: a desk to type lines at. All figures invented.

import { type Desk, newDesk } from "./desk.ts";

const source = "workshop book p. 62, invented";
const clearances = [
  { part: "pin", quantity: "taper", wear: [null, 0.001], unit: "in", source },
  { part: "pin", quantity: "out-of-round", wear: [null, 0.001], unit: "in", source },
  { part: "pin", quantity: "diameter", new: [2.248, 2.249], wear: [2.2475, null], unit: "in", source },
  { part: "main", quantity: "diameter", wear: [2.498, null], unit: "in", source },
  { part: "main", quantity: "taper", wear: [null, 0.001], unit: "in", source },
  { part: "main", quantity: "out-of-round", wear: [null, 0.001], unit: "in", source },
  { part: "rod bearing", quantity: "clearance", new: [0.001, 0.0025], unit: "in", source },
];

export const limits = { clearances, offered: { pin: { unit: "in", sizes: [0.01, 0.02, 0.03] } } };

export const deskWithSix = async (engineLimits: unknown = limits): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "tractor", "--cylinders", "6", "--ignition", "compression"]);
  const engine = JSON.parse(desk.text("logbook/tractor/engine.json")) as Record<string, unknown>;
  desk.put("logbook/tractor/engine.json", JSON.stringify({ ...engine, limits: engineLimits }, undefined, 2));
  return desk;
};

const sound = "2.2483 2.2482 2.2483 2.2482";
/** Six pins and seven mains, a line each. */
export const thirteen: readonly string[] = [
  ...["1", "2", "3", "4", "5"].map((label) => `pin ${label}: ${sound}`),
  "pin 6: 2.2462 2.2441 2.2482 2.2480",
  ...["1", "2", "3", "4", "5", "6", "7"].map((label) => `main ${label}: 2.4986 2.4984 2.4985 2.4983`),
];

export const start = ["--unit", "in", "--instrument", "micrometer", "--resolution", "0.0001in"];

/** Gauging thread on six rods, the last too near its limit. */
export const rods = `in
with thread
rod bearing 1: 0.0015
rod bearing 2: 0.0015
rod bearing 3: 0.0020
rod bearing 4: 0.0015
rod bearing 5: 0.0020
rod bearing 6: 0.0022
`;

export const measurements = (desk: Desk): readonly string[] =>
  desk.has("logbook/tractor/measurements.csv")
    ? desk.text("logbook/tractor/measurements.csv").trimEnd().split("\n").slice(1)
    : [];
