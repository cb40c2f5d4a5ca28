// Texts that a stranger's file may carry to harm whoever shows it: to steer the terminal, to turn what is read around, to hide,
// to overwrite, to be run by a browser or a spreadsheet, to be taken for a part of a program.

export const steeringTexts = {
  "window title": "\x1b]0;owned\x07",
  clipboard: "\x1b]52;c;cm0gLXJm\x07",
  "clipboard, one byte": "\x9d52;c;cm0gLXJm\x9c",
  link: "\x1b]8;;file:///x\x1b\\here\x1b]8;;\x1b\\",
  "clear screen": "\x1b[2J\x1b[H",
  "clear screen, one byte": "\x9b2J",
  "up and over": "131\x1b[1A\x1b[2K150",
  colours: "\x1b[31mred\x1b[0m",
  "device control": "\x90+q544e\x9c",
  "asks the terminal": "\x1b[6n\x1b[c\x05",
  "other letters": "\x1b(0qqq\x0e",
  bell: "\x07\x07\x07",
  backspace: "bad\b\b\bgood",
  delete: "bad\x7f\x7f",
  "override, right to left": "\u202egnp.exe",
  isolate: "\u2066a\u2069\u2067b",
  "arabic letter mark": "a\u061cb\u200eb\u200f",
  "zero width": "1\u200b3\u200c1\u200d\u2060",
  "mark inside": "a\ufeffb",
  "soft hyphen": "1\u00ad31",
  "tag letters": "a\u{e0041}\u{e007f}",
  fillers: "a\u3164\u115f\uffa0b",
  "line separators": "a\u2028b\u2029c\x85d",
  "form feed": "a\fb\vc",
  "marks upon marks": `a${"\u0301".repeat(400)}`,
  "very wide": "漢".repeat(400),
  "very long": "x".repeat(1_900),
  "no blank": "-".repeat(300),
};

export const markupTexts = {
  script: "<script>alert(1)</script>",
  "broken out of quotes": `"'><img src=x onerror=alert(1)>`,
  "closing what is open": "</style></svg></table><iframe srcdoc='x'>",
  comment: "--><svg/onload=alert(1)>",
  entity: "&lt;script&gt;&#60;b&#62;&amp",
  "template marks": "${7*7}{{7*7}}<%= 7*7 %>#{7*7}",
  "percent signs": "%s%n%x %1$s",
  prototype: "__proto__",
  "the maker of objects": "constructor",
  "what all can do": "toString",
  "what all can be asked": "hasOwnProperty",
  constructor: "constructor.prototype.polluted",
  "replacement marks": "$& $1 $` $' $<x>",
  backslashes: "\\u0022\\x1b\\n\\",
  path: "../../../../etc/passwd",
  "shell words": "; rm -rf ~ | `id` $(id) && ||",
  url: "javascript:alert(1)",
};

/** What a spreadsheet may run when a cell begins with it. */
export const formulaTexts = [
  "=1+1", "=cmd|'/c calc'!A0", '=HYPERLINK("x","y")', "=IMPORTXML(1)", "=WEBSERVICE(1)", "=DDE(1;2;3)", "+1+1", "+cmd|' /c calc'!A0",
  "-1+1", "-2+3+cmd|'x'!A0", "--1", "@SUM(1+1)", "@A1", " =1+1", "  +1+1", "\u00a0=1+1", "\u3000=1+1", "＝1+1", "＋1+1", "－1+1", "＠A1",
  "=", "+", "@", "=-1", "=+1", "-cmd", "-1,5x", "-1e5", '="x"', "='x'", "=A1:B2", "=1;2", "=\u202e1", "=IF(1,2)", "+A1", "-A1", "@1",
  "=x\u200b", "-(1)",
]; // prettier-ignore

/** What every object has, and what programs take for their own. */
export const builtInNames = [
  "__proto__", "constructor", "prototype", "toString", "valueOf", "hasOwnProperty", "isPrototypeOf", "toLocaleString", "then",
  "__defineGetter__", "__lookupSetter__", "propertyIsEnumerable", "length", "name", "toJSON",
]; // prettier-ignore
