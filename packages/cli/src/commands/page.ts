// page: one page to print or send, for the shop, a buyer or the own file.

import { type Answer, type Command } from "../command.ts";
import { pageDocument } from "../documents/page-document.ts";
import { shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { saidOnce } from "../render/aside.ts";
import { pageSaid } from "../render/page/page-said.ts";
import { gatherPage } from "./page-steps/gather-page.ts";
import { pageTarget } from "./page-steps/page-target.ts";
import { type Purpose, purposeOf, purposes, refuseNotes } from "./page-steps/purpose.ts";
import { writePage } from "./page-steps/write-page.ts";
import { pickRecord } from "./pick.ts";
import { theEngine } from "./the-engine.ts";

export const page: Command = {
  name: "page",
  summary: "one page to print or send: for the shop, a buyer, or your own file",
  examples: [
    "sealtrend page boat --for shop",
    "sealtrend page van --for buyer -o van.html",
    "sealtrend page tractor --for buyer -o tractor.txt",
  ],
  positionals: [theEngine],
  options: [
    {
      name: "for",
      value: "WHOM",
      choices: purposes,
      help: "who reads it",
      means: {
        shop: "sizes, what is asked for, parts",
        buyer: "every reading",
        file: "all there is",
      },
    },
    {
      name: "out",
      alias: "o",
      value: "PAGE",
      example: "page.html",
      help: "the file, .html or .txt, or - (default ENGINE-for-WHOM-DATE.html)",
    },
    { name: "text", help: "as plain text, 76 columns, for a message" },
    { name: "force", help: "write over a page that is there" },
    { name: "with-notes", help: "your private notes too, on a page for a buyer" },
    {
      name: "teardown",
      value: "N",
      help: "which time the engine was apart, 1 the first (default the newest)",
    },
  ],
  run: async (args, io): Promise<Answer> => {
    const purpose = purposeOf(args);
    refuseNotes(args, purpose);
    const { logbook, record } = await pickRecord(args, io);
    const target = pageTarget(args, io, { logbook, id: record.engine.id, purpose });
    const { page: model, cautions } = gatherPage(args, io, {
      ...{ logbook, record, purpose },
      form: target.form,
    });
    // drawing is loaded for this command alone: it would slow the start of all others
    const { pageFile } = await import("../render/page/page-file.ts");
    const text = pageFile(model, target.form, io.unicode ? "unicode" : "ascii");
    const size = Buffer.byteLength(text);
    const large = size > mostBytes ? [largeSaid(size, purpose)] : [];
    const said = [...logbook.asides, ...cautions, ...large];
    const aside = said.length === 0 ? {} : { aside: saidOnce(said) };
    const about = { engine: record.engine, purpose, form: target.form };
    if (target.path === undefined)
      return {
        exit: 0,
        text,
        json: pageDocument(model, { ...about, bytes: size }),
        ...aside,
      };
    const world = nodeWorld(io);
    const bytes = writePage(world, target.path, text, args.flag("force") ? "allowed" : "refused");
    const file = shown(io.cwd, target.path);
    const lines = pageSaid(model, { ...about, file, bytes, named: target.named }, io.width);
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: pageDocument(model, { ...about, bytes, file }),
      ...aside,
    };
  },
};

/** What a post box takes without a murmur. */
const mostBytes = 200_000;

const largeSaid = (bytes: number, purpose: Purpose): string =>
  `this page is ${String(Math.round(bytes / 1000))} kB, large for a message; ${purpose === "file" ? "it holds every reading: --for buyer holds the mean of each test" : "--text, or a name in .txt, is smaller"}`;
