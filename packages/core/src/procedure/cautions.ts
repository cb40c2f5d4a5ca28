// Cautions that several procedures share.

import { type Line, aircraft, boat, commonPractice, liquidCooled, onWheels } from "./line.ts";

/** The maker and the law come first. */
export const makerFirst: Line = {
  text: "The maker's manual and local rules come first, where they differ.",
  source: "AC 43.13-1B par. 8-1 and 8-14 for aircraft; common practice for others",
};

export const licensed: Line = {
  text: "Aircraft: a licensed person does, judges and signs this work.",
  source: "14 CFR 43; AC 43.13-1B",
  when: aircraft,
};

export const propeller: Line = {
  text: "Keep out of the propeller's arc; switches off, plug leads off.",
  source: "AC 43.13-1B par. 8-14; Lycoming SI 1191A",
  when: aircraft,
};

export const outOfGear: Line = {
  text: "Out of gear, brake on, wheels chocked; hands off fan and belts.",
  source: "Saturn L300 2005 (park or neutral); chocks: common practice",
  when: onWheels,
};

export const ventilate: Line = {
  text: "Boat: blow out the bilge first; cooling water on before it runs.",
  source: commonPractice,
  when: boat,
};

export const fuelMist: Line = {
  text: "Fuel mist comes from open holes: no flame, no spark.",
  source: "Kawasaki/Toro, Ford and E-Z-GO manuals",
  only: "spark",
};

export const injection: Line = {
  text: "Fuel under pressure cuts skin: let it down, cap lines.",
  source: "Mazda CX-30 workshop manual",
  only: "diesel",
};

export const hotCoolant: Line = {
  text: "Never open a hot cooling system; coolant can spray from a plug hole.",
  source: "Dodge 2002 service information; GM head-gasket bulletin",
  when: liquidCooled,
};
