// What a line may look like: the order of the figures of the parts that are measured most, and every shape.

import { type TypingShape, figureShapes, typingHelp } from "@sealtrend/core/parts";
import { prose } from "../prose.ts";
import { narrow } from "../table.ts";

const most = ["bore 3:", "main 4:", "rod bearing 2:"];

/** The order of the figures where it is asked for most, behind the unit where none is known yet. */
export const orderLines = (width: number, unit: "unit first" | "unit known"): readonly string[] =>
  [
    ...(unit === "unit first" ? [unitShape] : []),
    ...typingHelp.filter(
      ({ kind, example }) => kind === "part" && most.some((begins) => example.startsWith(begins)),
    ),
  ].flatMap((shape) => stacked(shape, width));

const unitShape = { example: "mm", means: "the unit first, mm or in; or one behind each figure" };

/** Those of `?` alone, in this order: they fit a screen beside the lines that were typed. */
const usual: readonly string[] = [
  ...["bore 3:", "ring gap 3:", "main 4:", "rod bearing 2:", "end play:"],
  ...["bore 3 top/thrust instead:", "bore 3: crosshatch", "mm", "with", "state"],
];

/** The usual shapes, and how the others are asked for. */
export const usualLines = (width: number): readonly string[] => [
  "The usual lines; figures in this order, - for one that was not taken",
  ...shapesIn(
    usual.flatMap((begins) => typingHelp.filter(({ example }) => isOf(example, begins)).slice(0, 1)),
    width,
  ),
  ...prose("Of one part: ? head, ? spring …   Every line there is: ? all", width),
];

const isOf = (example: string, begins: string): boolean =>
  begins.endsWith(":")
    ? example.startsWith(begins) && /\d/.test(example)
    : example.split(" ")[0] === begins || example.startsWith(`${begins} `);

/** Those whose head holds a word: `head`, `rod bearing`, `with`. */
export const shapesOf = (word: string, width: number): readonly string[] =>
  shapesIn(
    typingHelp.filter(({ example }) =>
      ` ${example.split(":")[0] ?? ""} `.toLowerCase().includes(` ${word} `),
    ),
    width,
  );

/** Every shape: parts, what is seen, what holds for the lines that follow, figures. */
export const shapeLines = (width: number): readonly string[] => {
  const of = (kind: TypingShape["kind"]): readonly TypingShape[] =>
    typingHelp.filter((shape) => shape.kind === kind);
  return [
    "Parts, figures in this order",
    ...shapesIn(of("part"), width),
    "Seen, not measured",
    ...shapesIn(of("finding"), width),
    "What holds from here on",
    ...shapesIn(of("setting"), width),
    "A figure",
    ...shapesIn(figureShapes, width),
  ];
};

interface Shape {
  readonly example: string;
  readonly means: string;
}

const column = 34;

/** Side by side; a long example, and all on a narrow screen, has its meaning below. */
const shapesIn = (shapes: readonly Shape[], width: number): readonly string[] =>
  shapes.flatMap((shape) =>
    width < narrow || shape.example.length > column - 4
      ? stacked(shape, width)
      : prose(shape.means, width, `  ${shape.example.padEnd(column - 2)}`),
  );

const stacked = ({ example, means }: Shape, width: number): readonly string[] => [
  ...prose(example, width, "  "),
  ...prose(means, width, "      "),
];
