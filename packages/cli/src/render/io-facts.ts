// What the terminal can show, from what the process was told. Pure: the caller hands the environment in.

export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** As in `process.platform`. */
  readonly platform: string;
  /** Whether the stream written to is a terminal. */
  readonly isTTY: boolean;
  /** As in `process.stdout.columns`; undefined off a terminal. */
  readonly columns?: number | undefined;
  /** `never` under `--no-color`. */
  readonly colour?: "never" | undefined;
  /** `ascii` under `--ascii`. */
  readonly letters?: "ascii" | undefined;
}

export interface IoFacts {
  /** Columns, within 40 … 200. */
  readonly width: number;
  readonly unicode: boolean;
  readonly colour: boolean;
}

const narrowest = 40;
const widest = 200;
const usual = 80;

const width = ({ env, columns }: Surroundings): number => {
  const told = [columns, Number(env.COLUMNS)].find((n) => n !== undefined && Number.isInteger(n) && n > 0);
  return Math.min(widest, Math.max(narrowest, told ?? usual));
};

const forces = (value: string | undefined): boolean => value !== undefined && value !== "" && value !== "0";

// The order is ours: who asks for no colour wins over who forces it. FORCE_COLOR=0 turns colour off, as in Node.
const colour = ({ env, isTTY, colour: asked }: Surroundings): boolean => {
  if (asked === "never" || (env.NO_COLOR ?? "") !== "") return false;
  if (env.FORCE_COLOR === "0") return false;
  if (forces(env.FORCE_COLOR) || forces(env.CLICOLOR_FORCE)) return true;
  return env.TERM !== "dumb" && isTTY;
};

const windowsTerms = new Set(["xterm-256color", "alacritty", "rxvt-unicode", "rxvt-unicode-256color"]);

// A locale that is not set says nothing; only one that names another encoding speaks against Unicode.
const unicode = ({ env, platform, letters }: Surroundings): boolean => {
  if (letters === "ascii") return false;
  const term = env.TERM ?? "";
  if (platform === "win32")
    return (
      Boolean(env.WT_SESSION) ||
      env.TERM_PROGRAM === "vscode" ||
      Boolean(env.ConEmuTask) ||
      windowsTerms.has(term)
    );
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find((value) => value !== undefined && value !== "");
  return term !== "linux" && term !== "dumb" && (locale === undefined || /utf-?8/i.test(locale));
};

/** Width, letters and emphasis of the output. Width: the terminal's own, else `COLUMNS`, else 80. */
export const ioFacts = (surroundings: Surroundings): IoFacts => ({
  width: width(surroundings),
  unicode: unicode(surroundings),
  colour: colour(surroundings),
});
