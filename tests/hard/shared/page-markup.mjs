// Whether a page holds markup of its own only: read by a small scanner of its elements and attributes, not by the program.

const elements = new Set(
  "html head meta title style body header footer main section article nav h1 h2 h3 h4 p ul ol li dl dt dd table caption colgroup col thead tbody tfoot tr th td strong em b i small span div a br hr abbr time figure figcaption svg g path line rect circle text tspan desc polyline polygon defs use marker details summary code pre sup sub".split(
    " ",
  ),
);

/** What is wrong with the markup of a page; undefined where nothing is. */
export const faultOfMarkup = (html) => {
  const body = html.replace(/<style>[\s\S]*?<\/style>/g, "").replace(/<!doctype html>/i, "");
  for (const [tag, name, rest] of body.matchAll(/<\/?([^\s/>]*)((?:"[^"]*"|'[^']*'|[^>"'])*)>?/g)) {
    if (!elements.has(name)) return `an element ${tag.slice(0, 80)}`;
    const attributes = rest.replace(/"[^"]*"/g, '""');
    if (/'|[^-\w\s="/:]/.test(attributes)) return `an attribute in ${tag.slice(0, 120)}`;
    if (/\s(?:on\w+|style|srcdoc|formaction)\s*=/i.test(attributes))
      return `an attribute in ${tag.slice(0, 120)}`;
    if (/\s(?:src|href)="(?!#)/.test(rest)) return `a link in ${tag.slice(0, 120)}`;
  }
  return undefined;
};
