// csv-parse's own types bring Node's globals into the core; this is the part that we use.

declare module "csv-parse/browser/esm/sync" {
  export interface Info {
    readonly lines: number;
    readonly error?: { readonly code: string };
  }
  export interface ParsedRecord {
    readonly record: string[];
    readonly raw: string;
    readonly info: Info;
  }
  export interface Options {
    readonly delimiter: string;
    readonly bom: boolean;
    readonly record_delimiter: readonly string[];
    readonly relax_column_count: boolean;
    readonly skip_empty_lines: boolean;
    readonly max_record_size: number;
    /** The last record, from 1. */
    readonly to: number;
  }
  export class CsvError extends Error {
    readonly code: string;
    readonly lines?: number;
  }
  export function parse(
    input: string,
    options: Options & { readonly info: true; readonly raw: true },
  ): ParsedRecord[];
}
