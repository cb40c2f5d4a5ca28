// All that the shell may ask of the world outside, so that a test can stand in for it.

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
   *  @param ifLeft - printed where the person leaves by Ctrl-C: what was typed before */
  ask(question: string, ifLeft?: string): Promise<string | undefined>;
  /** All of standard input, as bytes; nothing where it is a terminal, which would wait for ever. */
  readInput(): Promise<Uint8Array>;
}
