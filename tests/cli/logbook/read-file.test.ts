import { mkdirSync, symlinkSync, truncateSync } from "node:fs";
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { sha256 } from "../../../packages/cli/src/logbook/fingerprint.ts";
import { readFile, readFileIfThere } from "../../../packages/cli/src/logbook/read-file.ts";
import { decode, encode } from "../../../packages/cli/src/logbook/encoding.ts";
import { lineEndOf } from "../../../packages/cli/src/logbook/line-ends.ts";
import { newPlace, stopOf, systemError } from "./place.ts";

const read = (content: string | Uint8Array): ReturnType<typeof readFile> => {
  const place = newPlace();
  return readFile(place.world(), place.put("tests.csv", content));
};

describe("reading a user's file", () => {
  test("UTF-8 is read with or without a mark, and the mark is no part of the text", () => {
    expect(read("a,é\n")).toMatchObject({
      text: "a,é\n",
      encoding: "utf-8",
      bom: "none",
      size: 5,
      cautions: [],
    });
    expect(read("\uFEFFa,é\n")).toMatchObject({ text: "a,é\n", encoding: "utf-8", bom: "bom", size: 8 });
  });

  test("the fingerprint is the SHA-256 of all bytes", () => {
    // FIPS 180-2, appendix B.1: SHA-256 of "abc"
    const published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    expect(sha256(read("abc").bytes)).toBe(published);
  });

  test("a file that is not UTF-8 is read as Windows-1252, and that is said", () => {
    const file = read(Uint8Array.from([0x80, 0x2c, 0xe9, 0x2c, 0x93, 0x0a]));
    expect(file.text).toBe("€,é,“\n");
    expect(file.encoding).toBe("windows-1252");
    expect(file.cautions.map(({ code, severity }) => [code, severity])).toEqual([
      ["file-windows-1252", "caution"],
    ]);
  });

  test("UTF-16 with a mark is read in both byte orders", () => {
    expect(read(Uint8Array.from([0xff, 0xfe, 0x61, 0, 0xe9, 0]))).toMatchObject({
      text: "aé",
      encoding: "utf-16le",
    });
    expect(read(Uint8Array.from([0xfe, 0xff, 0, 0x61, 0, 0xe9]))).toMatchObject({
      text: "aé",
      encoding: "utf-16be",
    });
  });

  test("a UTF-8 file cut off inside a character stays UTF-8, with a caution", () => {
    const file = read(Buffer.from("né\nü").subarray(0, 5));
    expect(file.text).toBe("né\n\uFFFD");
    expect(file.cautions.map(({ code }) => code)).toEqual(["file-cut-off"]);
  });

  test("zero bytes are a fault", async () => {
    expect(await stopOf(() => read("a\0b"))).toBe("1: file-zero-bytes");
    expect(await stopOf(() => read(new Uint8Array(4096)))).toBe("1: file-zero-bytes");
    expect(await stopOf(() => read(Uint8Array.from([0xff, 0xfe, 0x61])))).toBe("1: file-half-character");
  });

  test("a file of more than 16 MiB is refused, one of 16 MiB is read", async () => {
    const place = newPlace();
    const path = place.put("tests.csv", new Uint8Array(16 * 1024 * 1024).fill(0x61));
    expect(readFile(place.world(), path).size).toBe(16 * 1024 * 1024);
    place.put("tests.csv", new Uint8Array(16 * 1024 * 1024 + 1).fill(0x61));
    expect(await stopOf(() => readFile(place.world(), path))).toBe("3: file-too-large");
  });

  test("a missing file is undefined or a fault, as the caller asks", async () => {
    const place = newPlace();
    const path = join(place.root, "none.csv");
    expect(readFileIfThere(place.world(), path)).toBeUndefined();
    expect(await stopOf(() => readFile(place.world(), path))).toBe("3: file-missing");
  });

  test("a folder, a pipe and a refusal of the system are faults, and a pipe does not hang", async () => {
    const place = newPlace();
    mkdirSync(join(place.root, "folder"));
    expect(await stopOf(() => readFile(place.world(), join(place.root, "folder")))).toBe(
      "3: file-not-regular",
    );
    if (process.platform !== "win32") {
      execFileSync("mkfifo", [join(place.root, "pipe")]);
      expect(await stopOf(() => readFile(place.world(), join(place.root, "pipe")))).toBe(
        "3: file-not-regular",
      );
    }
    const path = place.put("tests.csv", "a");
    const world = place.failing({
      readSync: () => {
        throw systemError("EIO");
      },
    });
    expect(await stopOf(() => readFile(world, path))).toBe("3: file-system");
  });

  test("reading follows links", () => {
    const place = newPlace();
    symlinkSync(place.put("real.csv", "a"), join(place.root, "tests.csv"));
    expect(readFile(place.world(), join(place.root, "tests.csv")).text).toBe("a");
  });

  test("a file cut at any byte is read, and the rows before the cut are the same", () => {
    const place = newPlace();
    const whole = Buffer.from("\uFEFFtest,note\n2026-05-02a,né à Brest\n2026-05-03a,“tight” 𝄞\n");
    const path = place.put("tests.csv", whole);
    const text = whole.toString("utf8").slice(1);
    for (let keep = whole.length - 1; keep >= 4; keep -= 1) {
      truncateSync(path, keep);
      const cut = readFile(place.world(), path).text;
      const lines = cut.slice(0, cut.lastIndexOf("\n") + 1);
      expect(text.startsWith(lines), `cut after ${String(keep)} bytes`).toBe(true);
    }
  });
});

describe("encodings", () => {
  test("every byte of Windows-1252 comes back as it was", () => {
    const all = Uint8Array.from({ length: 255 }, (_, index) => index + 1);
    const decoded = decode(all);
    expect(decoded?.encoding).toBe("windows-1252");
    const encoded = encode(decoded?.text ?? "", "windows-1252");
    expect("bytes" in encoded && Buffer.from(encoded.bytes).equals(all)).toBe(true);
  });

  test("the characters of 0x80 to 0x9F are those of the Unicode mapping table of code page 1252", () => {
    // unicode.org, MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT, from memory: rows 0x80 to 0x9F that are defined
    const table =
      "80 20AC,82 201A,83 0192,84 201E,85 2026,86 2020,87 2021,88 02C6,89 2030,8A 0160,8B 2039,8C 0152,8E 017D,91 2018,92 2019,93 201C,94 201D,95 2022,96 2013,97 2014,98 02DC,99 2122,9A 0161,9B 203A,9C 0153,9E 017E,9F 0178";
    for (const row of table.split(",")) {
      const [byte = "", code = ""] = row.split(" ");
      const text = decode(Uint8Array.from([Number.parseInt(byte, 16), 0xe9, 0x20]))?.text ?? "";
      expect(text.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0"), row).toBe(code);
    }
  });

  test("a character that an encoding cannot hold is named", () => {
    expect(encode("a☃", "windows-1252")).toEqual({ character: "☃" });
    expect(encode("a\uD800", "utf-8")).toEqual({ character: "\uD800" });
  });

  test("the line end of a file is the one most of its lines have", () => {
    expect(["", "a", "a\nb\n", "a\r\nb\r\n", "a\rb\r", 'a\r\n"x\ny"\r\n'].map(lineEndOf)).toEqual([
      "\n",
      "\n",
      "\n",
      "\r\n",
      "\r",
      "\r\n",
    ]);
  });
});
