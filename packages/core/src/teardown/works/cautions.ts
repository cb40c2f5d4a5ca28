// What can hurt somebody or ruin a part in the work that is asked for.

/** @source Triumph owners' list; Detroit Series 60 manual (aluminium parts not in caustic); bushings: common practice */
export const hotTank =
  "A caustic tank eats aluminium, plugs and soft bushings: those out first, goggles and gloves.";
/** @source common practice, no source */
export const capsNumbered = "Mark rods and caps before they come off; caps never swap or turn.";
/** @source common practice, no source */
export const springsFly = "Springs under load fly: compressor, eye protection, valve held.";
/** @source 29 CFR 1910.242(b), 1917.154 */
export const airAndDust = "Air for cleaning at 30 psi at most, goggles, never at people.";
/** @source common practice, no source */
export const heavyParts = "Lift the crank with help or a hoist; never stand it on a flange.";
/** @source 14 CFR 43; AC 43.13-1B */
export const aircraftLimits = "Aircraft: limits and release are the maker's and a licensed person's.";
