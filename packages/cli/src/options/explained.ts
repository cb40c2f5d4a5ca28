// What an option takes, in a line: its help and the words that it knows.

import type { Option } from "../command.ts";

export const explained = ({ help, choices, words = choices, means, orElse }: Option): string => {
  const told = (words ?? []).map((word) => (means?.[word] === undefined ? word : `${word} (${means[word]})`));
  const taken = [...told, ...(orElse === undefined ? [] : [`or ${orElse}`])];
  return taken.length === 0 ? help : `${help}: ${taken.join(", ")}`;
};
