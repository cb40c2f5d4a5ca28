// Nothing real is ever written into a demo logbook.

import type { Logbook } from "../logbook/open-logbook.ts";
import { shown } from "../logbook/words.ts";
import { usage } from "./usage.ts";

/** @throws Stop 2 when the logbook is the demo */
export const refuseDemo = ({ facts, root, world }: Logbook): void => {
  if (!facts.demo) return;
  throw usage(
    "demo-logbook",
    `${shown(world.cwd, root)} is the demo: invented engines, nothing real is written there`,
    "a logbook of your own",
    "begin one with --logbook ./logbook, or run where no demo is named",
  );
};
