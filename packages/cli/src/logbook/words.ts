// Every sentence about a file that could not be read or written, by code.

import { isAbsolute, relative } from "node:path";

import type { Problem } from "@sealtrend/core";
import { asTheirs } from "../as-theirs.ts";
import { quoted } from "../options/quote.ts";

interface Facts {
  /** The file, as shown to the user. */
  readonly file: string;
  /** What else the sentence names: a size, a character, a lock, a process, a command. */
  readonly detail?: string;
}

interface Words {
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
}

/** A name that an engine can have, made of one that it cannot: `v8` is `engine-v8`, `Boat 2` is `boat-2`. */
const goodName = (name: string): string => {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9_-]+/g, "-")
    .replace(/^[-_]+|[-_]+$/g, "");
  return (/^[a-z][a-z]/.test(plain) ? plain : `engine-${plain === "" ? "1" : plain}`).slice(0, 40);
};

export const fileWords = {
  "file-missing": ({ file }: Facts) => ({
    found: `there is no file ${file}`,
    expected: "an existing file",
    mend: "look at the spelling of the path, or run: sealtrend proofread",
  }),
  "file-not-regular": ({ file }: Facts) => ({
    found: `${file} is not a file`,
    expected: "a file of text",
    mend: "give the path of a file in it",
  }),
  "file-too-large": ({ file, detail }: Facts) => ({
    found: `${file} is too large: ${detail ?? ""}`,
    expected: "at most 16 MiB",
    mend: "split it into one file an engine",
  }),
  "file-zero-bytes": ({ file, detail }: Facts) => ({
    found: `${file} holds zero bytes, ${detail ?? ""} of them: damaged by a power cut, or no text`,
    expected: "text in UTF-8",
    mend: "take the file from a backup; if a spreadsheet wrote it, save it again as CSV UTF-8",
  }),
  "file-half-character": ({ file }: Facts) => ({
    found: `${file} is UTF-16 text cut off in the middle of a character`,
    expected: "an even number of bytes",
    mend: "open it in a spreadsheet or an editor and save it as UTF-8",
  }),
  "file-windows-1252": ({ file }: Facts) => ({
    found: `${file} is not UTF-8 and was read as Windows-1252`,
    expected: "text in UTF-8",
    mend: "look at the accented letters; to be rid of this, save the file as CSV UTF-8",
  }),
  "file-mixed-encoding": ({ file }: Facts) => ({
    found: `${file} is marked as UTF-8 but holds bytes that are not`,
    expected: "text in UTF-8",
    mend: "open it in a spreadsheet or an editor, look at the accented letters, and save it as CSV UTF-8",
  }),
  "file-cut-off": ({ file }: Facts) => ({
    found: `${file} ends in the middle of a character: its last line looks cut off`,
    expected: "a last line that is whole",
    mend: `look at the last line of ${file}`,
  }),
  "character-not-in-encoding": ({ file, detail }: Facts) => ({
    found: `${file} cannot hold the character "${detail ?? ""}": it is a Windows-1252 file`,
    expected: "characters of Windows-1252",
    mend: "write it without that character, or save the file as CSV UTF-8 and run the command again",
  }),
  "path-outside": ({ file, detail }: Facts) => ({
    found: `${file} lies outside the logbook ${detail ?? ""}`,
    expected: "a file in the logbook; a link that leads out of it is not written through",
    mend: "put the file itself into the logbook, or name the other folder with --logbook",
  }),
  "link-to-nothing": ({ file }: Facts) => ({
    found: `${file} is a link to a file that does not exist`,
    expected: "a file, or a link to one",
    mend: `remove the link: rm ${quoted(file)}`,
  }),
  "file-exists": ({ file }: Facts) => ({
    found: `${file} is already there`,
    expected: "a new name: nothing is written over an existing file",
    mend: "choose another name, or move the file away",
  }),
  "file-changed": ({ file }: Facts) => ({
    found: `${file} was changed while this command was at work`,
    expected: "a file that nobody else writes to meanwhile",
    mend: "save and close it where it is open, then run the command again",
  }),
  "file-hard-linked": ({ file, detail }: Facts) => ({
    found: `${file} has ${detail ?? "several"} names on this disk (hard links); mending it would part them`,
    expected: "a file with one name",
    mend: `make it one of its own: cp ${quoted(file)} ${quoted(`${file}.new`)} && mv ${quoted(`${file}.new`)} ${quoted(file)}`,
  }),
  "file-read-only": ({ file }: Facts) => ({
    found: `${file} is marked read-only`,
    expected: "a file that may be written",
    mend: `allow it (in Windows: its properties, Read-only): chmod u+w ${quoted(file)}`,
  }),
  "file-locked": ({ file, detail }: Facts) => ({
    found: `${file} is in use by ${detail ?? "another sealtrend"}`,
    expected: "a free file within a few seconds",
    mend: `wait for the other one; if none is running: rm ${quoted(`${file}.lock`)}`,
  }),
  "lock-lost": ({ file }: Facts) => ({
    found: `the lock on ${file} was taken by another sealtrend while this one stood still`,
    expected: "an undisturbed command",
    mend: "run the command again",
  }),
  "not-put-back": ({ file, detail }: Facts) => ({
    found: `${file} could not be put back as it was: ${detail ?? ""}`,
    expected: "all of a command, or nothing",
    mend: "mend the disk, then run any sealtrend command: it puts the file back first",
  }),
  "saved-not-shown": ({ detail }: Facts) => ({
    found: `all is saved, but ${detail ?? ""}`,
    expected: "to show what it comes to",
    mend: "do not enter it again; look at it: sealtrend show",
  }),
  "undo-nothing": ({ file }: Facts) => ({
    found: `no command is known that could be taken back in ${file}`,
    expected: "a command of the last 20 that wrote to this logbook from this computer",
    mend: 'change one entry instead: sealtrend amend ENGINE --test latest --because "..."',
  }),
  "undo-unreadable": ({ file }: Facts) => ({
    found: `what the last command changed in ${file} cannot be made out: its note is cut off, or of another version`,
    expected: "a whole note of the last command; what came before it is not the last",
    mend: 'change the entry by itself: sealtrend amend ENGINE --test latest --because "..."',
  }),
  "undo-changed": ({ file, detail }: Facts) => ({
    found: `${file} has changed since: ${detail ?? "the last command"}`,
    expected: "the file as that command left it",
    mend: 'change the entry by itself: sealtrend amend ENGINE --test latest --because "..."',
  }),
  "logbook-missing": ({ file, detail }: Facts) => ({
    found: `there is no logbook ${file} (${detail ?? ""})`,
    expected: "a folder",
    mend: "look at the spelling of the folder",
  }),
  "logbook-none": () => ({
    found: "there is no logbook yet",
    expected: "--logbook DIR, SEALTREND_LOGBOOK, ./logbook or the folder of this user",
    mend: "look at the demo (sealtrend demo), or begin one: sealtrend engine add pump --cylinders 4 --ignition compression",
  }),
  "engine-id": ({ detail }: Facts) => ({
    found: `"${detail ?? ""}" cannot be the name of an engine`,
    expected: "2 to 40 small letters, digits, - or _, the first two letters (it names a folder)",
    mend: `write ${goodName(detail ?? "")}, or a name such as pump or boat-port`,
  }),
  "folder-refused": ({ file, detail }: Facts) => ({
    found: `the folder ${file} is not read: its name cannot be that of an engine`,
    expected: "2 to 40 small letters, digits, - or _, the first two letters",
    mend: `rename it, to ${goodName(detail ?? "")} perhaps: mv ${quoted(file)} ${quoted(file.slice(0, -(detail ?? "").length) + goodName(detail ?? ""))}`,
  }),
  "engine-id-device": ({ detail }: Facts) => ({
    found: `"${detail ?? ""}" names a device in Windows and cannot be a folder there`,
    expected: "any other name",
    mend: `write ${detail ?? ""}-engine`,
  }),
  "engine-id-taken": ({ file, detail }: Facts) => ({
    found: `there is already a folder ${file}`,
    expected: `a name that differs from it by more than capitals, not "${detail ?? ""}"`,
    mend: "choose another name, or use the engine that is there",
  }),
  "engine-id-file": ({ file }: Facts) => ({
    found: `${file} is no folder, and stands where that of the engine would`,
    expected: "a name that nothing in the logbook has",
    mend: "choose another name, or move it elsewhere",
  }),
} as const satisfies Record<string, (facts: Facts) => Words>;

export type FileCode = keyof typeof fileWords;

/** A fault about a file; command.ts, which brings all kinds together, stands above this file. */
type FileFault = Omit<Problem, "code"> & { readonly code: FileCode | "file-system" };

/** A fault about a file, with its place; `severity` is `caution` for what was read all the same. */
export const fileFault = (
  code: FileCode,
  facts: Facts,
  severity: Problem["severity"] = "error",
): FileFault => ({
  code,
  severity,
  file: facts.file,
  ...fileWords[code](facts),
});

/** A caution as an aside says it. */
export const asSaid = ({ found, mend }: Pick<Problem, "found" | "mend">): string => `${found}; ${mend}`;

/** Why the system refused, in plain words, and what to do about it. */
const reasons: Readonly<Record<string, readonly [reason: string, mend: string]>> = {
  ENOSPC: ["the disk is full", "make room on the disk"],
  EDQUOT: ["your share of the disk is used up", "delete something of yours"],
  EACCES: ["you may not write or read here", "allow it (chmod u+rw), or name another folder with --logbook"],
  EPERM: ["the system forbids it", "close the file where it is open, or allow writing to it"],
  EROFS: [
    "the disk can only be read",
    "copy the logbook to a disk that can be written, and name it with --logbook",
  ],
  EBUSY: ["another program holds it", "close the spreadsheet or editor"],
  ETXTBSY: ["another program holds it", "close the program that uses it"],
  EIO: ["the disk reports an error", "copy the logbook to another disk at once"],
  ENOENT: ["a folder on the way to it does not exist", "look at the spelling of the path"],
  ENOTDIR: ["a part of the path is a file, not a folder", "look at the spelling of the path"],
  EISDIR: ["it is a folder", "give the path of a file"],
  ENAMETOOLONG: ["its name is too long", "shorten the name"],
  ELOOP: ["its links lead in a circle", "remove the link"],
  EMFILE: ["too many files are open", "close other programs"],
  ENFILE: ["too many files are open", "close other programs"],
  EFBIG: ["the file would grow too large", "split the file"],
  ESTALE: ["the network folder went away", "connect it again"],
};

/** A refusal of the system. @param doing - `read`, `written`, `created`, `removed`, `locked` */
export const systemFault = (file: string, doing: string, code: string): FileFault => {
  const [reason, mend] = reasons[code] ?? ["the system refused", "look at the file and the disk"];
  return {
    code: "file-system",
    severity: "error",
    file,
    found: `${file} could not be ${doing}: ${reason} (${code})`,
    expected: "a file and a disk that can be used; nothing was changed",
    mend: `${mend}, then run the command again`,
  };
};

/** What failed when all was saved already. */
export const savedFault = ({ found, file }: Pick<Problem, "found" | "file">): FileFault =>
  fileFault("saved-not-shown", { file: file ?? "", detail: found });

/** A path as the user would type it: relative where it lies below the working folder. */
export const shown = (cwd: string, path: string): string => {
  const short = relative(cwd, path);
  return asTheirs(short === "" || short.startsWith("..") || isAbsolute(short) ? path : short);
};
