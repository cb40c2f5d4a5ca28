// What a command says, on one line.

import type { Desk } from "./desk.ts";

export const plain = (text: string): string => text.replaceAll(/\s+/g, " ");

/** @throws Error where it fails, with what it said */
export const told = async (desk: Desk, ...words: readonly string[]): Promise<string> => {
  const { exit, out, err } = await desk.type(words);
  if (exit !== 0) throw new Error(out + err);
  return plain(out);
};
