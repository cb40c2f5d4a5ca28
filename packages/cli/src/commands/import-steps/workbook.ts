// Files that a spreadsheet opens and that are no text: known by their first bytes, and refused with the way to make them CSV.

import type { Fault } from "../../command.ts";

interface Head {
  readonly bytes: readonly number[];
  readonly is: string;
}

const ascii = (text: string): readonly number[] => [...text].map((sign) => sign.charCodeAt(0));

// The heads are those of the published formats: ZIP (local file header and empty archive), the compound file of
// older workbooks, PDF, RTF; a page of HTML is what some programs save under a spreadsheet's name.
const heads: readonly Head[] = [
  { bytes: [0x50, 0x4b, 0x03, 0x04], is: "a workbook (.xlsx or .ods), packed, not text" },
  { bytes: [0x50, 0x4b, 0x05, 0x06], is: "an empty packed file, not text" },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1], is: "an old workbook (.xls), not text" },
  { bytes: ascii("%PDF-"), is: "a PDF, not a sheet" },
  { bytes: ascii("{\\rtf"), is: "a letter in RTF, not a sheet" },
  { bytes: ascii("<html"), is: "a web page, not a sheet" },
  { bytes: ascii("<!doctype html"), is: "a web page, not a sheet" },
  { bytes: ascii("<?xml"), is: "XML, not a sheet" },
];

/** The fault of a file that is no CSV; undefined where it may be one. */
export const workbookFault = (file: string, bytes: Uint8Array): Fault | undefined => {
  const start = bytes.subarray(0, 64);
  const lower = [...start].map((byte) => (byte >= 0x41 && byte <= 0x5a ? byte + 0x20 : byte));
  const head = heads.find(
    ({ bytes: wanted }) =>
      wanted.every((byte, i) => start[i] === byte) || wanted.every((byte, i) => lower[i] === byte),
  );
  if (head === undefined) return undefined;
  return {
    code: "sheet-workbook",
    severity: "error",
    file,
    found: `${file} is ${head.is}`,
    expected: "a table as text: CSV",
    mend: `open it in a spreadsheet, save the sheet as CSV (UTF-8), then: sealtrend import ${csvName(file)}`,
  };
};

const csvName = (file: string): string => `${file.replace(/\.[a-z]{1,5}$/i, "")}.csv`;
