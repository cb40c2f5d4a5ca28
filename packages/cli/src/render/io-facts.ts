// What the terminal can show, from what the process was told. Pure: the caller hands the environment in.

export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** As in `process.platform`. */
  readonly platform: string;
  /** As in `process.stdout.columns`; undefined off a terminal. */
  readonly columns?: number | undefined;
  /** `ascii` under `--ascii`. */
  readonly letters?: "ascii" | undefined;
}

export interface IoFacts {
  /** Columns, within 40 … 200. */
  readonly width: number;
  readonly unicode: boolean;
}

const narrowest = 40;
const widest = 200;
const usual = 80;

const width = ({ env, columns }: Surroundings): number => {
  const told = [columns, Number(env.COLUMNS)].find((n) => n !== undefined && Number.isInteger(n) && n > 0);
  return Math.min(widest, Math.max(narrowest, told ?? usual));
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

/** Width and letters of the output; it has no colours, so NO_COLOR and --no-color have nothing to take away. Width: the terminal's own, else `COLUMNS`, else 80. */
export const ioFacts = (surroundings: Surroundings): IoFacts => ({
  width: width(surroundings),
  unicode: unicode(surroundings),
});
