// Where a page goes: the file that was named, or one named after the engine in the folder at hand; checked before any work.

import { extname, join, relative, resolve } from "node:path";
import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { realPath } from "../../logbook/inside.ts";
import type { Logbook } from "../../logbook/open-logbook.ts";
import { shown } from "../../logbook/words.ts";
import { usage } from "../usage.ts";

export type PageForm = "html" | "text";

export interface PageTarget {
  /** Absent: standard output. */
  readonly path?: string;
  readonly form: PageForm;
  /** Whether the name was chosen here. */
  readonly named: "typed" | "by-us";
}

const forms: Readonly<Record<string, PageForm>> = { ".html": "html", ".htm": "html", ".txt": "text" };

/** @throws Stop 2 where the name is that of a file of the logbook, or says nothing of the form */
export const pageTarget = (
  args: Args,
  { cwd, today }: Pick<Io, "cwd" | "today">,
  { logbook, id, purpose }: { readonly logbook: Logbook; readonly id: string; readonly purpose: string },
): PageTarget => {
  const asText = args.flag("text");
  const typed = args.text("out");
  if (typed === "-") return { form: asText ? "text" : "html", named: "typed" };
  const name = typed ?? `${id}-for-${purpose}-${today}.${asText ? "txt" : "html"}`;
  const path = resolve(cwd, name);
  if (/[\\/]$/.test(name) || isFolder(logbook, path))
    throw usage(
      "page-folder",
      `-o "${name}" is a folder`,
      "the name of a file",
      `-o ${join(name, `${id}-for-${purpose}.${asText ? "txt" : "html"}`)}`,
    );
  const extension = extname(path).toLowerCase();
  const form = forms[extension];
  if (/^\.(csv|json)$/.test(extension) && isInside(logbook, path))
    throw usage(
      "page-over-data",
      `${shown(cwd, path)} is a name for a file of the logbook`,
      "a file of its own for the page",
      `-o ${id}-for-${purpose}.html`,
    );
  if (form === undefined)
    throw usage(
      "page-name",
      `-o "${name}"`,
      "a name that ends in .html (to print) or .txt (for a message), or - for standard output",
      `-o ${name.replace(/\.[^./\\]*$/, "")}.html`,
    );
  if (asText && form === "html")
    throw usage(
      "page-name",
      `--text with -o "${name}"`,
      "a name that ends in .txt",
      `-o ${name.slice(0, -extension.length)}.txt`,
    );
  return { path, form, named: typed === undefined ? "by-us" : "typed" };
};

const isFolder = ({ world }: Logbook, path: string): boolean =>
  world.fs.lstatSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

const isInside = ({ world, root }: Logbook, path: string): boolean =>
  !/^\.\.(?:[\\/]|$)/.test(relative(realPath(world, root), realPath(world, path)));
