// The shapes of a typed line, each with an example that can be typed as it stands on an engine of four cylinders.

/** One shape of a typed line, with an example. */
export interface TypingShape {
  readonly kind: "part" | "finding" | "setting";
  readonly example: string;
  /** The order of its figures, or what it sets. */
  readonly means: string;
}

const part = (example: string, means: string): TypingShape => ({ kind: "part", example, means });
const finding = (example: string, means: string): TypingShape => ({ kind: "finding", example, means });
const setting = (example: string, means: string): TypingShape => ({ kind: "setting", example, means });

/** Settings first, for an example may need one that stands before it. */
export const typingHelp: readonly TypingShape[] = [
  setting("mm", "unit of bare figures: mm, in, th (0.001 in), tenths (0.0001 in), um"),
  setting("with bore gauge 0.01mm", 'instrument, read to; of your own: with "my gauge" 0.01mm; with off'),
  setting("state cleaned", "as found, cleaned, new part, after machining"),
  setting("by Ann", "who measures; by off ends it"),
  setting("date 2026-03-02", "day of the measuring"),
  setting("teardown 2", "the engine is apart for the second time"),
  setting("set 86.50", "then +.12 -.02 count from it; set off ends it"),
  setting("at 75mm", "from gap to gap along the straightedge; at off ends it"),
  part(
    "bore 3: 86.62 86.58 86.56 86.55 86.53 86.52",
    "top, middle, bottom; at each thrust (across the crank), then axial",
  ),
  part("bore 3 top/thrust instead: 86.61", "takes the place of what was read there before"),
  part("bore 3 unworn: 86.50 86.51", "above the ridge or below ring travel: thrust, axial"),
  part("bore 3 ridge: 0.05", "half the difference across the ridge"),
  part("piston 3 at 11mm: 86.45", "skirt, across the pin, 11 mm from the bottom"),
  part("ring gap 3: 0.35..0.40 0.30..0.35 <0.25", "ring 1, ring 2, oil ring (four: 1, 2, 3, oil)"),
  part("ring gap 3 bottom: 0.35..0.40 0.30..0.35", "the same, with where in the bore"),
  part("ring gap 3 1: 0.45..0.50 0.40..0.45 0.35..0.40", "ring 1: top, middle, bottom"),
  part("ring side 3: 0.05..0.06 0.04..0.05 <0.04", "groove clearance: ring 1, ring 2, oil ring"),
  part(
    "main 4: 2.4986in 2.4984in 2.4985in 2.4983in",
    "front 0, front 90, rear 0, rear 90 degrees (six: middle too)",
  ),
  part("pin 4: 2.2482in 2.2481in 2.2482in 2.2480in", "as a main; 0 points to the middle of the crank"),
  part("rod bearing 2: 0.0022in", "gauging thread; two: front, rear; three: front, middle, rear"),
  part("main bearing 4: 0.0018in 0.0018in 0.0020in", "the same"),
  part("main bearing 4 bore: 63.55 63.54", "shells in, cap torqued, at the crown: front, rear"),
  part(
    "housing main 4: 67.01 67.00 67.01",
    "no shells, cap torqued: 45, 90 (crown), 135 degrees; or housing rod 2",
  ),
  part("rod side 2: 0.20..0.25", "side clearance on its pin"),
  part("end play: 0.15", "crank, pried both ways"),
  part("runout 3: 0.02", "crank at main 3, full reading of the dial"),
  part(
    "head long1 at 75mm: 0 0.02 0.04 0.02 0",
    "from the end, every 75 mm; long1 long2 centre diagonal1 diagonal2 end1 end2",
  ),
  part("deck diagonal1 at 240mm: <0.04", "one gap, 240 mm from the end; also between 1-2"),
  part("guide 3in: 8.02 8.02 8.01 8.01 8.02 8.03", "top, middle, bottom: each thrust, axial; stem alike"),
  part("stem 3ex: 7.97 7.97 7.96 7.96 7.97 7.97", "top, middle, bottom: each thrust, axial"),
  part("seat 3ex width: 1.4", "or seat 3ex runout"),
  part("valve 3ex margin: 1.1", "edge of the head"),
  part("spring 3in: 45.2", "free length; outer or inner behind the label where there are two"),
  part("spring 3in squareness: 1.2", "top off the square"),
  part("spring 3in load at 36.5mm: 250N", "force at that length"),
  part("chamber 3: 42.5ml", "volume; crown alike"),
  finding(
    "bore 3: crosshatch full, score light",
    "crosshatch full, part, none; score none, light, nail catches",
  ),
  finding("main bearing 4 lower: one-sided", "appearance of a shell, upper or lower"),
  finding(
    "crack head: between 2 and 3 exhaust, 12mm, dye",
    "where, how long, found by dye, magnetic, pressure or seen",
  ),
];

/** What a figure may look like, for all lines. */
export const figureShapes: readonly { readonly example: string; readonly means: string }[] = [
  { example: "86.62mm 22th 3-7/16in", means: "its own unit" },
  { example: "86.62/86.63", means: "two readings of one place" },
  { example: "0.35..0.40", means: "feeler: 0.35 goes, 0.40 does not" },
  { example: "<0.04", means: "the thinnest leaf, 0.04, does not enter" },
  { example: "-", means: "not taken; x too" },
  { example: "86.62 ; warm engine", means: "blank, semicolon: a note for the whole line" },
  { example: "86.62 # again", means: "a # alone: a comment, not kept" },
];
