// Where the answer cannot be written: stdout closed, full, or given up by its reader; stderr closed. What was saved stays saved.
//   node tests/hard/streams.mjs

import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { begin } from "./shared/part.mjs";
import { flat, realCommand } from "./shared/real-command.mjs";

const part = begin();
const { scratch, shell, sealtrend } = realCommand("streams");
const logbook = join(scratch, "logbook");
mkdirSync(logbook);
await sealtrend(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);

const enter = '$sealtrend enter pump --dry "150 149 148 147" --unit psi --by me';
const rows = () => {
  const file = join(logbook, "pump", "tests.csv");
  return existsSync(file) ? readFileSync(file, "utf8").trim().split("\n").length - 1 : 0;
};

/** A line, the exit it must have, what stderr must say or must not, and how many rows it adds. */
const cases = [
  ["enter, stdout full", `${enter} > /dev/full`, 3, /could not be written.*saved/, 1],
  // Node opens /dev/null in the place of a stream that was closed: this looks as > /dev/null does, and ends as that does.
  ["enter, stdout closed", `${enter} >&-`, 0, /^$/, 1],
  ["enter, stdout given up", `${enter} | true; exit \${PIPESTATUS[0]}`, 0, /^$/, 1],
  ["enter, stderr closed", `${enter} 2>&-`, 0, /^$/, 1],
  ["enter, both closed", `${enter} >&- 2>&-`, 0, /^$/, 1],
  ["enter, all three closed", `${enter} <&- >&- 2>&-`, 0, /^$/, 1],
  ["enter, stdin closed", `${enter} <&-`, 0, /^$/, 1],
  ["enter refused, stderr closed", `$sealtrend enter pump --dry "150 149" --unit psi 2>&-`, 2, /^$/, 0],
  ["show, stdout full", "$sealtrend show pump > /dev/full", 3, /could not be written(?!.*saved)/, 0],
  ["show, stdout closed", "$sealtrend show pump >&-", 0, /^$/, 0],
  ["show in JSON, stdout full", "$sealtrend show pump --json > /dev/full", 3, /could not be written/, 0],
  ["history, only the first line read", "$sealtrend history pump | head -1; exit ${PIPESTATUS[0]}", 0, /^$/, 0],
  ["help, only the first line read", "$sealtrend help --all | head -1; exit ${PIPESTATUS[0]}", 0, /^$/, 0],
  ["a page on stdout, its reader gone", "$sealtrend page pump --for file -o - | head -c 1 > /dev/null; exit ${PIPESTATUS[0]}", 0, /^$/, 0],
  ["a page on stdout, full", "$sealtrend page pump --for file -o - > /dev/full", 3, /could not be written/, 0],
  ["version, stdout full", "$sealtrend --version > /dev/full", 3, /could not be written/, 0],
  ["a fault in JSON, stdout full", "$sealtrend show nobody --json > /dev/full", 3, /could not be written/, 0],
  ["undo, stdout full", "$sealtrend undo > /dev/full", 3, /could not be written.*saved/, -1],
  ["gauge add, stdout full", "$sealtrend gauge add red --kind compression --unit psi > /dev/full", 3, /could not be written.*saved/, 0],
  ["teardown, lines in a pipe", "echo 'bore 1: 86.5mm' | $sealtrend teardown pump", 0, /bore 1/, 0],
  ["teardown, lines in a pipe that are not read", "echo 'bore 2: 86.5mm' | $sealtrend teardown pump --no-input", 0, /^the lines on standard input were not read and nothing was saved/, 0],
  ["teardown, lines in a file that are not read", "$sealtrend teardown pump --no-input < logbook/pump/tests.csv", 0, /^the lines on standard input were not read/, 0],
  ["teardown, a pipe with nothing in it", ": | $sealtrend teardown pump --no-input", 0, /^$/, 0],
  ["teardown, a pipe that stays open", "sleep 2 | $sealtrend teardown pump --no-input", 0, /^$/, 0],
  ["teardown, stdin closed", "$sealtrend teardown pump --no-input <&-", 0, /^$/, 0],
  ["teardown, in a loop over lines, takes none of them", "printf '1\\n2\\n3\\n' | (while read one; do $sealtrend teardown pump --no-input > /dev/null; echo $one; done | grep -c .) | grep -qx 3", 0, /^$/, 0],
]; // prettier-ignore

for (const [name, line, wanted, says, more] of cases) {
  const before = rows();
  const { exit, err } = shell(line);
  const said = flat(err).trim();
  const fault =
    exit !== wanted
      ? `ends with ${String(exit)}, not ${String(wanted)}: ${said}`
      : !says.test(said)
        ? `says ${said}`
        : rows() - before !== more
          ? `adds ${String(rows() - before)} rows`
          : undefined;
  part.tried(name, fault);
}
const proof = await sealtrend(["proofread"]);
part.tried("the logbook afterwards", proof.exit === 0 ? undefined : proof.out + proof.err);
part.end({ streams: cases.length });
