// All that the shell may ask of the world outside, so that a test can stand in for it.

export type Takes = "typed ahead" | "typed now";

export interface Io {
  /** Writes the answer (stdout). */
  out(text: string): void;
  /** Writes about the answer (stderr). */
  err(text: string): void;
  /** Columns of the output; 80 where nothing tells. */
  readonly width: number;
  /** Whether a person can be asked: stdin and stdout are terminals. */
  readonly interactive: boolean;
  /** Whether stdout is a terminal. */
  readonly terminal: boolean;
  readonly unicode: boolean;
  /** Today's local date, `YYYY-MM-DD`. */
  readonly today: string;
  /** Now, local, `YYYY-MM-DDTHH:MM:SS`. */
  now(): string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  /** Asks one line of a person; undefined at end of input. Only where `interactive`.
   *  @param ifLeft - printed where the person leaves by Ctrl-C: what was typed before
   *  @param takes - whether lines that were typed ahead answer it, or wait for the questions they were meant for */
  ask(question: string, ifLeft?: string, takes?: Takes): Promise<string | undefined>;
  /** Whether a line was typed ahead of its question. */
  waits(): Promise<boolean>;
  /** All of standard input, as bytes; nothing where it is a terminal, which would wait for ever. */
  readInput(): Promise<Uint8Array>;
  /** The same in parts, as they come, so that it may be larger than the memory. */
  inputParts(): AsyncIterable<Uint8Array>;
  /** Whether standard input holds text that was not read; never waits for it. */
  inputHolds(): boolean;
  /** Whether stderr is a terminal: somebody waits and sees. */
  readonly watched: boolean;
  /** Told when what a command does is on the disk: what fails afterwards must not sound as if it were not. */
  readonly saved?: (command: string) => void;
  /** Told by a command that takes no longer than Node's own start: what V8 would compile anew on the way is then not worth it. */
  readonly brief?: () => void;
  /** Whether the answer is still read: whoever closed the pipe has read enough. */
  isRead(): boolean;
}
