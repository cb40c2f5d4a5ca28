// A page as one HTML file that needs nothing else: no script, no font, no picture, no address.

import { dotsSvg } from "./dots-svg.ts";
import { type Markup, html, none } from "./html.ts";
import { type Page, type PageBlock, type PageSection, blank } from "./page-model.ts";
import { pageStyle } from "./page-style.ts";
import { stripsSvg } from "./strips-svg.ts";
import { tableHtml } from "./table-html.ts";

/** The whole document, with a line end at its end. */
export const pageHtml = ({ title, under, sections, foot }: Page): string =>
  `${String(
    html`<!doctype html>
      <html lang="en">
        <head>
          <meta charset="utf-8" />
          <meta
            http-equiv="Content-Security-Policy"
            content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"
          />
          <meta name="viewport" content="width=device-width, initial-scale=1" />
          <meta name="referrer" content="no-referrer" />
          <title>${title}</title>
          ${pageStyle}
        </head>
        <body>
          <main>
            <header>
              <h1>${title}</h1>
              ${under.map((text) => html`<p>${text}</p>`)}
            </header>
            ${pairsOf(sections).map(pairHtml)}
            <footer>${foot.map((text) => html`<p>${text}</p>`)}</footer>
          </main>
        </body>
      </html>`,
  )}\n`;

/** Not in the template itself: a bundle keeps the letters of a template as they are, and it is read as ASCII. */
const front = "FRONT of the engine this way →";

/** Sections that need half the width stand two by two. */
const pairsOf = (sections: readonly PageSection[]): readonly (readonly PageSection[])[] => {
  const pairs: PageSection[][] = [];
  for (const section of sections) {
    const last = pairs.at(-1);
    if (section.room === "half" && last?.length === 1 && last[0]?.room === "half") last.push(section);
    else pairs.push([section]);
  }
  return pairs;
};

const pairHtml = (pair: readonly PageSection[]): Markup =>
  pair.length === 1
    ? html`${pair.map(sectionHtml)}`
    : html`<div class="beside">${pair.map(sectionHtml)}</div>`;

const sectionHtml = ({ heading, blocks, code }: PageSection): Markup =>
  html`<section class="s-${code}">
    ${heading === "" ? none : html`<h2>${heading}</h2>`}${blocks.map(blockHtml)}
  </section>`;

const blockHtml = (block: PageBlock): Markup => {
  switch (block.kind) {
    case "text":
      return block.role === undefined
        ? html`<p>${withBlanks(block.text)}</p>`
        : html`<p class="${block.role}">${withBlanks(block.text)}</p>`;
    case "list":
      return html`<ul>
        ${block.items.map((text) => html`<li>${withBlanks(text)}</li>`)}
      </ul>`;
    case "facts":
      return html`<dl>
        ${block.items.map(
          ({ name, value }) =>
            html`<dt>${name}</dt>
              <dd>${withBlanks(value)}</dd>`,
        )}
      </dl>`;
    case "blanks":
      return html`<dl class="blanks">
        ${block.items.map(
          ({ name, given = "", width }) =>
            html`<div${width === "wide" ? html` class="full"` : none}><dt>${name}</dt><dd>${given}</dd></div>`,
        )}
      </dl>`;
    case "ticks":
      return html`<ul class="ticks">
        ${block.items.map(({ text, weight }) => {
          const said = weight === "strong" ? html`<strong>${withBlanks(text)}</strong>` : withBlanks(text);
          return html`<li><span class="box"></span>${said}</li>`;
        })}
      </ul>`;
    case "table":
      return tableHtml(block);
    case "strips":
      return figure(block.caption, stripsSvg(block));
    case "dots":
      return figure(block.caption, dotsSvg(block));
    case "sketch":
      return html`<div class="sketch"><span>${block.caption}</span><span class="front">${front}</span></div>`;
    case "beside":
      return html`<div class="beside">${block.blocks.map((one) => html`<div>${blockHtml(one)}</div>`)}</div>`;
  }
};

const figure = (caption: string, svg: Markup): Markup =>
  html`<figure>
    <figcaption>${caption}</figcaption>
    <div class="wide" tabindex="0" role="group" aria-label="${caption}">${svg}</div>
  </figure>`;

/** A text in which every `___` is a line to write on. */
const withBlanks = (text: string): readonly Markup[] =>
  text
    .split(blank)
    .flatMap((part, i) => (i === 0 ? [html`${part}`] : [html`<span class="line"></span>`, html`${part}`]));
