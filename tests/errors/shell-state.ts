// What text alone cannot bring about before a case of the shell's catalogue: links, modes, sizes, locks, a disk that fails.

import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { dirname, join } from "node:path";

export interface Standing {
  /** Done before each line typed; gives back what undoes it. */
  readonly during?: () => () => void;
  /** Ends it for good. */
  readonly free?: () => void;
}

/** `folder NAME`, `link NAME -> TO`, `hard link NAME -> TO`, `mode 444 NAME`, `size 20000000 NAME`, `bytes NAME a\\xe9\\n`,
 *  `append NAME LINE`, `every test of DATE in NAME`, `run sealtrend ...`, `env NAME=VALUE`, `locked NAME`, `fails openSync with EACCES at NAME`,
 *  `fails openSync with EIO at NAME once saved`, `torn notes of undo`, `meanwhile CALL NAME FILE LINE`, `dies`. */
export const bringAbout = (state: string, cwd: string): Standing => {
  const at = (name: string): string => {
    const path = join(cwd, name);
    fs.mkdirSync(dirname(path), { recursive: true });
    return path;
  };
  const [word = "", first = "", ...rest] = state.split(" ");
  switch (word) {
    case "folder":
      fs.rmSync(at(first), { force: true });
      fs.mkdirSync(at(first), { recursive: true });
      return {};
    case "link":
      fs.rmSync(at(first), { force: true });
      fs.symlinkSync(rest[1] ?? "", at(first));
      return {};
    case "hard":
      fs.linkSync(at(rest[2] ?? ""), at(rest[0] ?? ""));
      return {};
    case "append":
      fs.appendFileSync(at(first), `${rest.join(" ")}\n`);
      return {};
    case "every":
      fs.appendFileSync(at(rest[3] ?? ""), everyTest(rest[1] ?? ""));
      return {};
    case "mode":
      fs.chmodSync(at(rest[0] ?? ""), parseInt(first, 8));
      return {};
    case "size":
      fs.truncateSync(touched(at(rest[0] ?? "")), Number(first));
      return {};
    case "bytes":
      fs.writeFileSync(at(first), bytesOf(rest.join(" ")));
      return {};
    case "meanwhile":
      return meanwhile(rest, cwd, first);
    case "env":
      return {};
    case "dies":
      return { during: dying };
    case "locked":
      return locked(at(first));
    case "fails":
      return rest.slice(4).join(" ") === "once saved"
        ? onceSaved(first, rest[3] ?? "", rest[1] ?? "")
        : onCall(first, rest[3] ?? "", failing(rest[1] ?? ""));
    case "torn":
      return tornNotes(at("state"));
    default:
      throw new Error(`no such state: ${state}`);
  }
};

const touched = (path: string): string => {
  fs.appendFileSync(path, "");
  return path;
};

/** A row under each name that a day has, in the columns of the logbook boat. */
const everyTest = (date: string): string => {
  const letters = [..."abcdefghijklmnopqrstuvwxyz"];
  const names = ["", ...letters].flatMap((second) => letters.map((first) => `${date}${second}${first}`));
  return names.map((name) => `${name},${date},,dry,1,red,psi,126,125,124,127,,,,,,,,\n`).join("");
};

/** By a process of another computer, about which nobody here can ask. */
const locked = (path: string): Standing => {
  const owner = { pid: 4711, host: "barn-pc", nonce: "other" };
  fs.writeFileSync(`${path}.lock`, JSON.stringify(owner));
  return {
    during: withoutWaiting,
    free: () => {
      fs.unlinkSync(`${path}.lock`);
    },
  };
};

/** The clock runs ahead by as long as somebody sleeps. */
const withoutWaiting = (): (() => void) => {
  const { setTimeout: timer } = globalThis;
  const { now } = Date;
  let ahead = 0;
  Date.now = () => now() + ahead;
  const sleepless = (act: () => void, milliseconds = 0) => {
    ahead += milliseconds;
    return setImmediate(act);
  };
  globalThis.setTimeout = sleepless as unknown as typeof setTimeout;
  return () => {
    globalThis.setTimeout = timer;
    Date.now = now;
  };
};

/** Latin letters as bytes; `\\n` and `\\xe9` for those that no editor shows. */
const bytesOf = (text: string): Buffer =>
  Buffer.from(
    text.replace(/\\(?:n|x([0-9a-f]{2}))/g, (_, code: string | undefined) =>
      code === undefined ? "\n" : String.fromCharCode(Number(`0x${code}`)),
    ),
    "latin1",
  );

/** Somebody else adds a line to a file while the command is at a call of the file system, and is gone after it. */
const meanwhile = (
  [name = "", file = "", ...line]: readonly string[],
  cwd: string,
  call: string,
): Standing => {
  const before = fs.existsSync(join(cwd, file)) ? fs.readFileSync(join(cwd, file)) : undefined;
  const { during } = onCall(call, name, () => {
    fs.appendFileSync(join(cwd, file), `${line.join(" ")}\n`);
  });
  return {
    during: () => {
      const after = during?.();
      return () => {
        after?.();
        if (before === undefined) fs.rmSync(join(cwd, file), { force: true });
      };
    },
  };
};

/** The process gets a number that no process has, as one that died has left it. */
const dying = (): (() => void) => {
  const own = Object.getOwnPropertyDescriptor(process, "pid");
  Object.defineProperty(process, "pid", { value: 2 ** 22 + 1, configurable: true });
  return () => {
    if (own !== undefined) Object.defineProperty(process, "pid", own);
  };
};

const failing = (code: string) => (): never => {
  throw Object.assign(new Error(`${code}: injected`), { code });
};

/** Fails when the note of the command has lost its name, which is the moment of saving; it was given it by a rename too. */
const onceSaved = (call: string, name: string, code: string): Standing => ({
  during: () => {
    let renames = 0;
    const ends = [
      onCall("renameSync", ".pending", () => {
        renames += 1;
      }),
      onCall(call, name, () => {
        if (renames > 1) failing(code)();
      }),
    ].map(({ during }) => during?.());
    return () => {
      for (const end of ends.reverse()) end?.();
    };
  },
});

/** What `undo` goes by, cut off. */
const tornNotes = (state: string): Standing => {
  for (const name of fs.readdirSync(state, { recursive: true, encoding: "utf8" }))
    if (name.endsWith(".json")) fs.truncateSync(join(state, name), 40);
  return {};
};

/** Nothing here is to outlast the test, and a flush takes longer than all else. */
export const unflushed = (): (() => void) => {
  const { fsyncSync } = fs;
  fs.fsyncSync = () => undefined;
  syncBuiltinESMExports();
  return () => {
    fs.fsyncSync = fsyncSync;
    syncBuiltinESMExports();
  };
};

/** Acts ahead of each call of the file system on a path that ends in `name`. */
const onCall = (call: string, name: string, act: () => void): Standing => ({
  during: () => {
    const calls = fs as unknown as Record<string, (...given: readonly unknown[]) => unknown>;
    const real = calls[call];
    if (real === undefined) throw new Error(`no such call: ${call}`);
    calls[call] = (...given) => {
      if (given.some((one) => typeof one === "string" && one.endsWith(name))) act();
      return real(...given);
    };
    syncBuiltinESMExports();
    return () => {
      calls[call] = real;
      syncBuiltinESMExports();
    };
  },
});
