// `?` and `help` at the prompt: the usual lines, those of one part, or all of them.

import { nearest, typingHelp } from "@sealtrend/core/parts";
import { prose } from "../../render/prose.ts";
import { shapeLines, shapesOf, usualLines } from "../../render/teardown/teardown-shapes.ts";

/** What is asked; undefined where the line is no question. @returns lines without line ends */
export const askedShapes = (typed: string, width: number): readonly string[] | undefined => {
  const [, about] = /^(?:\?|help(?=\s|$))(.*)$/i.exec(typed) ?? [];
  if (about === undefined) return undefined;
  const word = about.trim().toLowerCase();
  if (word === "") return usualLines(width);
  if (word === "all") return shapeLines(width);
  const shapes = shapesOf(word, width);
  if (shapes.length > 0) return shapes;
  const words = [...new Set(typingHelp.map(({ example }) => /^[a-z]+/.exec(example)?.[0] ?? ""))];
  const [near] = nearest(word, words);
  const offer = near === undefined ? "? all shows every line there is" : `? ${near}`;
  return prose(`no line begins with "${word}": ${offer}`, width);
};
