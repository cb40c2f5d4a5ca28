// A date as it stands in a stranger's sheet. Which part is the day is never guessed: the map says it, or the cell does.

import { dateOfDay, dayNumber } from "../../quantity/index.ts";
import type { IsoDate } from "../iso-date.ts";
import { isIsoDate } from "../row-view.ts";
import type { DateOrder } from "./import-map.ts";
import { dateOrders } from "./map-words.ts";
import { remembered } from "./remembered.ts";
import { monthNamed } from "./sheet-words.ts";

/** A cell as the day it means under each order of its parts; an order under which it is no day is not there. */
export type DateWays = ReadonlyMap<DateOrder, IsoDate>;

const clockTime = /[T\s]+\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:\s*[AaPp]\.?[Mm]\.?)?$/;
const numeric = /^(\d{1,4})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{1,4})\.?$/;
const dayFirst =
  /^(?:\p{L}+\.?,?\s+)?(\d{1,2})(?:st|nd|rd|th|er|\.|º)?[\s./-]*(?:de\s+)?(\p{L}{3,})\.?[\s,./-]*(?:de\s+)?(\d{2}|\d{4})$/u;
const monthFirst = /^(?:\p{L}+\.?,?\s+)?(\p{L}{3,})\.?\s+(\d{1,2})(?:st|nd|rd|th)?[\s,]+(\d{2}|\d{4})$/u;

/** The days a text can mean; empty where it is no date. A time behind it is dropped; two digits of a year are of 1970 to 2069. */
export const dateWays = remembered((typed: string): DateWays => {
  if (typed.length > 40) return new Map();
  const text = typed.replace(clockTime, "").trim();
  const named = dayFirst.exec(text);
  const [, month = "", day = "", year = ""] = monthFirst.exec(text) ?? [];
  if (named !== null) return everyOrder(named[3], monthNamed(named[2] ?? ""), named[1]);
  if (month !== "") return everyOrder(year, monthNamed(month), day);
  const [, a = "", , b = "", c = ""] = numeric.exec(text) ?? [];
  if (a === "") return new Map();
  if (a.length > 2) return everyOrder(a, b, c);
  const ways: readonly (readonly [DateOrder, IsoDate | undefined])[] = [
    ["ymd", c.length > 2 ? undefined : iso(a, b, c)],
    ["dmy", iso(c, b, a)],
    ["mdy", iso(c, a, b)],
  ];
  return new Map(ways.flatMap(([order, day]) => (day === undefined ? [] : [[order, day] as const])));
});

const within =
  /\d{4}-\d{2}-\d{2}|\d{1,4}[./-]\d{1,2}[./-]\d{1,4}|\d{1,2}\.? \p{L}{3,12}\.? \d{4}|\p{L}{3,12} \d{1,2}, \d{4}/u;

/** The date in a title such as `Test of 3 May 2026`; undefined where there is none. */
export const dateWithin = (title: string): string | undefined => {
  const [found] = within.exec(title.slice(0, 200)) ?? [];
  return found !== undefined && dateWays(found).size > 0 ? found : undefined;
};

/** A text with only one meaning has it whatever the order. */
const everyOrder = (
  year: string | undefined,
  month: string | number | undefined,
  day: string | undefined,
): DateWays => {
  const only = iso(year, month, day);
  return new Map(only === undefined ? [] : dateOrders.map((order) => [order, only] as const));
};

const iso = (
  year: string | undefined,
  month: string | number | undefined,
  day: string | undefined,
): IsoDate | undefined => {
  if (year === undefined || month === undefined || day === undefined) return undefined;
  if (year.length !== 2 && year.length !== 4) return undefined;
  const full = year.length === 4 ? Number(year) : Number(year) + (Number(year) < 70 ? 2000 : 1900);
  const text = `${String(full)}-${String(month).padStart(2, "0")}-${day.padStart(2, "0")}`;
  return isIsoDate(text) ? text : undefined;
};

/** Day 0 of the two calendars that spreadsheets count in. The older one counts a 29 February 1900 that never was, so from
 *  March 1900 on its day 0 is 1899-12-30. */
const dayZero = { from1900: dayNumber("1899-12-30"), from1904: dayNumber("1904-01-01") } as const;

/** The two days that a spreadsheet's serial number such as 45231 can mean; undefined where it is none. */
export const serialDays = (
  text: string,
): { readonly in1900: IsoDate; readonly in1904: IsoDate } | undefined => {
  if (!/^\d{5}(?:[.,]\d+)?$/.test(text)) return undefined;
  const days = Number(text.slice(0, 5));
  return days > 73_000
    ? undefined
    : { in1900: dateOfDay(dayZero.from1900 + days), in1904: dateOfDay(dayZero.from1904 + days) };
};
