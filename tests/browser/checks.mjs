// What must hold of every page, asked of the page itself in a browser. Each function runs there, so it may use nothing from
// outside; it answers with the faults it finds.

/** Nothing but what our templates make: an element or attribute beyond these came out of somebody's text. */
export const strangers = () => {
  const elements = new Set(
    "html head meta title style body main header footer section div h1 h2 p ul li dl dt dd span strong figure figcaption table caption thead tbody tr th td svg desc defs marker path text g circle".split(
      " ",
    ),
  );
  const attributes = new Set(
    "lang charset http-equiv content name class id role tabindex aria-label aria-labelledby scope colspan rowspan viewbox d x y cx cy r markerwidth markerheight markerunits marker-start marker-mid marker-end".split(
      " ",
    ),
  );
  return [...document.querySelectorAll("*")].flatMap((one) => [
    ...(elements.has(one.localName) ? [] : [`<${one.localName}>`]),
    ...[...one.attributes]
      .map(({ name }) => name.toLowerCase())
      .filter((name) => !attributes.has(name))
      .map((name) => `${one.localName}[${name}]`),
  ]);
};

/** One h1, no level left out, no id twice, no list or section without content. */
export const structure = () => {
  const faults = [];
  const levels = [...document.querySelectorAll("h1,h2,h3,h4,h5,h6")].map((one) => Number(one.localName[1]));
  if (levels.filter((level) => level === 1).length !== 1 || levels[0] !== 1)
    faults.push(`headings ${levels.join(" ")}`);
  levels.forEach((level, i) => i > 0 && level > levels[i - 1] + 1 && faults.push(`heading ${i} jumps`));
  const ids = [...document.querySelectorAll("[id]")].map(({ id }) => id);
  if (new Set(ids).size < ids.length) faults.push("an id twice");
  for (const one of document.querySelectorAll("section,ul,dl,tbody,header"))
    if (one.childElementCount === 0) faults.push(`empty ${one.localName}`);
  for (const one of document.querySelectorAll("h1,h2,caption,th,title"))
    if (one.textContent.trim() === "") faults.push(`empty ${one.localName}`);
  if (document.documentElement.lang !== "en") faults.push("no language");
  if (document.characterSet !== "UTF-8") faults.push(`read as ${document.characterSet}`);
  return faults;
};

/** Every table has a caption, every head says what it heads, every row has its head and as many cells as the others. */
export const tables = () =>
  [...document.querySelectorAll("table")].flatMap((table, i) => {
    const faults = [];
    if (!table.caption?.textContent.trim()) faults.push("no caption");
    for (const th of table.querySelectorAll("th"))
      if (!/^(row|col|rowgroup|colgroup)$/.test(th.scope)) faults.push("a head without scope");
    for (const body of table.tBodies)
      if (body.rows[0]?.cells[0]?.localName !== "th") faults.push("a row without its head");
    const widths = new Map();
    [...table.rows].forEach((row, r) => {
      for (const cell of row.cells)
        for (let k = 0; k < cell.rowSpan; k += 1) widths.set(r + k, (widths.get(r + k) ?? 0) + cell.colSpan);
    });
    if (new Set(widths.values()).size > 1)
      faults.push(`rows of ${[...new Set(widths.values())].join(", ")} cells`);
    return faults.map((fault) => `table ${i}: ${fault}`);
  });

/** Every drawing says what it shows, and every mark it uses is there. */
export const drawings = () =>
  [...document.querySelectorAll("svg")].flatMap((svg) => [
    ...(svg.getAttribute("role") === "img" ? [] : ["a drawing that is none to a reader"]),
    ...(svg.querySelector("title")?.textContent.trim() ? [] : ["a drawing without a title"]),
    ...(svg.querySelector("desc")?.textContent.trim() ? [] : ["a drawing without words"]),
    ...(svg.getAttribute("aria-labelledby") ?? "")
      .split(" ")
      .filter((id) => document.getElementById(id) === null),
    ...[...svg.querySelectorAll("[marker-start]")]
      .map((one) => /#([^)]*)/.exec(one.getAttribute("marker-start"))[1])
      .filter((id) => document.getElementById(id) === null),
    ...(/NaN|Infinity|undefined/.test(svg.outerHTML) ? ["a number that is none"] : []),
  ]);

/** Text against what is behind it, 4.5 to 1 at least (WCAG 2.1, 1.4.3). */
export const contrast = () => {
  const channel = (value) => (value <= 0.03928 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
  const light = ([r, g, b]) =>
    0.2126 * channel(r / 255) + 0.7152 * channel(g / 255) + 0.0722 * channel(b / 255);
  const rgb = (text) => text.match(/[\d.]+/g).map(Number);
  const behind = (one) => {
    for (let at = one; at !== null; at = at.parentElement) {
      const [r, g, b, a = 1] = rgb(getComputedStyle(at).backgroundColor);
      if (a > 0) return [r, g, b];
    }
    return [255, 255, 255];
  };
  const texts = [...document.querySelectorAll("body *")].filter(
    (one) =>
      [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== "") &&
      one.localName !== "title" &&
      one.localName !== "desc",
  );
  return texts.flatMap((one) => {
    const style = getComputedStyle(one);
    const colour = rgb(one.namespaceURI.endsWith("svg") ? style.fill : style.color);
    const [a, b] = [light(colour), light(behind(one))].sort((x, y) => y - x);
    return (a + 0.05) / (b + 0.05) >= 4.5 ? [] : [`${one.localName} "${one.textContent.slice(0, 20)}"`];
  });
};

/** Nothing runs over the paper or the screen. @param allowed - `scroll`: a wide table may be moved by itself */
export const overflow = (allowed) => {
  const wide = document.documentElement.clientWidth;
  const faults =
    document.documentElement.scrollWidth > wide + 1
      ? [`the page is ${document.documentElement.scrollWidth} wide on ${wide}`]
      : [];
  if (allowed === "scroll") return faults;
  for (const one of document.querySelectorAll("table,svg,p,li,dd,h1,h2")) {
    const { right } = one.getBoundingClientRect();
    if (right > wide + 1)
      faults.push(
        `${one.localName} ends at ${Math.round(right)} of ${wide}: ${one.textContent.slice(0, 30)}`,
      );
  }
  return faults;
};
