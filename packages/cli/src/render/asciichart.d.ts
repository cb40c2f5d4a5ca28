// What chart.ts uses of asciichart; the package brings no types of its own.

declare module "asciichart" {
  export interface PlotConfig {
    readonly min: number;
    readonly max: number;
    readonly height: number;
    readonly offset: number;
    readonly format: (value: number, row: number) => string;
    /** Ten signs: axis crossing, axis, two ends, level, and the corners ╰ ╭ ╮ ╯ and upright of a line. */
    readonly symbols: readonly string[];
  }
  export function plot(series: readonly number[], config: PlotConfig): string;
}
