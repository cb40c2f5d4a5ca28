// What holds for the first line, as the options say it: read by the same reader as the lines that say it later.

import { type Engine, type TypingContext, readTypedLine, startTyping } from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import { checkTexts } from "../typed/typed-text.ts";
import { usageFault } from "../usage.ts";

/** @throws Stop 2 for an option that no line could say */
export const startContext = (
  args: Args,
  {
    day,
    teardown,
    engine,
    carried,
  }: {
    readonly day: string;
    readonly teardown: number;
    readonly engine: Engine;
    /** Of an earlier sitting; the options come after it. */
    readonly carried: Partial<TypingContext>;
  },
): TypingContext => {
  checkTexts(args, ["instrument", "by"]);
  const { unit, instrument, resolution, by, state } = Object.fromEntries(
    ["unit", "instrument", "resolution", "by", "state"].map((name) => [name, args.text(name)]),
  );
  if (resolution !== undefined && instrument === undefined)
    throw new Stop(2, [
      usageFault(
        "instrument-missing",
        `--resolution ${resolution}: of which instrument?`,
        "--instrument with it",
        `--instrument micrometer --resolution ${resolution}`,
      ),
    ]);
  const lines: readonly (readonly [string, string | undefined])[] = [
    ["unit", unit],
    ["instrument", instrument === undefined ? undefined : `with ${instrument} ${resolution ?? ""}`],
    ["by", by === undefined ? undefined : `by ${by}`],
    ["state", state === undefined ? undefined : `state ${state}`],
  ];
  return lines.reduce<TypingContext>(
    (context, [option, line]) => {
      if (line === undefined) return context;
      const read = readTypedLine(line.trim(), context, engine);
      if (read.kind === "context") return read.context;
      const problems = read.kind === "fault" ? read.problems : [];
      throw new Stop(
        2,
        problems.map(({ code, found, expected, mend }) =>
          usageFault(code, `--${option}: ${found}`, expected, mend),
        ),
      );
    },
    { ...startTyping(day, teardown), ...carried },
  );
};
