// Whatever somebody wrote stays text on a page.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { html, none } from "../../../../packages/cli/src/render/page/html.ts";

describe("the tag", () => {
  test("what is put in is shown as text, in elements and attributes alike", () => {
    const text = `<b title='x'>"&"</b>`;
    expect(String(html`<p class="${text}">${text}</p>`)).toBe(
      `<p class="&lt;b title=&#39;x&#39;&gt;&quot;&amp;&quot;&lt;/b&gt;">&lt;b title=&#39;x&#39;&gt;&quot;&amp;&quot;&lt;/b&gt;</p>`,
    );
  });

  test("what the tag made stays what it is, alone and in a list", () => {
    const item = html`<li>a &amp; b</li>`;
    expect(
      String(
        html`<ul>
          ${[item, item]}${none}
        </ul>`,
      ),
    ).toBe("<ul><li>a &amp; b<li>a &amp; b</ul>");
  });

  test("characters that steer or hide are written out", () => {
    expect(String(html`${"a\u202eb\u0007c\u200bd"}`)).toBe("a\\u{202e}b\\u{7}c\\u{200b}d");
  });

  test("line breaks and indents of the source are left out, one space is kept between words and attributes", () => {
    expect(
      String(
        html`<p class="a" id="b">one two</p>
          <p></p>`,
      ),
    ).toBe("<p class=a id=b>one two</p><p></p>");
  });

  test("an attribute that was made before does not run into the next", () => {
    const made = html` class="a"`;
    expect(
      String(
        html`<p${made}
          id="b"
        ></p>`,
      ),
    ).toBe("<p class=a id=b></p>");
  });

  test("no text makes an element, an attribute or an entity", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const made = String(html`<p title="${text}">${text}</p>`);
        expect(made.match(/[<>]/g)).toHaveLength(4);
        expect(made.match(/"/g)).toHaveLength(2);
        expect(made.replace(/&(?:amp|lt|gt|quot|#39);/g, "")).not.toContain("&");
      }),
    );
  });
});
