// `prices` of engine.json, and prices typed over them, as values: what a decision reckons with.

import { amountOf } from "./amount.ts";
import { type JsonObject, fieldAt, isObject } from "./json-view.ts";
import { priceFields } from "./price-fields.ts";
import type { EnginePrices, TypedPrice } from "./price-types.ts";

/** What is stated of money; each field was found sound before. Undefined where nothing is. */
export const pricesOf = (root: JsonObject): EnginePrices | undefined => {
  const currency = fieldAt(root, "prices.currency");
  const stated = Object.keys(priceFields).flatMap((path): TypedPrice[] => {
    const value = fieldAt(root, path);
    return typeof value === "number" ? [{ path: path.slice("prices.".length), value }] : [];
  });
  if (stated.length === 0 && currency === undefined) return undefined;
  return withPrices(typeof currency === "string" ? { ...none, currency } : none, stated);
};

const none: EnginePrices = { jobs: {}, work: {}, daysNow: {}, daysLater: {}, resale: {}, redo: {} };

/** Typed prices over those of engine.json; the later wins.
 *  @throws RangeError on a path that is none of `priceFields` */
export const withPrices = (prices: EnginePrices | undefined, typed: readonly TypedPrice[]): EnginePrices =>
  typed.reduce((sum: EnginePrices, { path, value }): EnginePrices => {
    if (priceFields[`prices.${path}`] === undefined || path === "currency")
      throw new RangeError(`withPrices: no price ${path}`);
    const [group = "", name] = path.split(".");
    if (name === undefined) return { ...sum, [group]: value };
    const before: unknown = new Map<string, unknown>(Object.entries(sum)).get(group);
    return { ...sum, [group]: { ...(isObject(before) ? before : {}), [name]: value } };
  }, prices ?? none);

/** A price or chance typed as `work.reRing=620`, its path below `prices`.
 *  @returns why it is none, in the words of a message */
export const readPrice = (
  typed: string,
):
  | { readonly ok: true; readonly price: TypedPrice }
  | { readonly ok: false; readonly found: "no-sign" | "path" | "value"; readonly path: string } => {
  const [, path = "", value = ""] = /^([^=]*)=(.*)$/.exec(typed.trim()) ?? [];
  if (!typed.includes("=")) return { ok: false, found: "no-sign", path: typed.trim() };
  const field = path === "currency" ? undefined : priceFields[`prices.${path.trim()}`];
  if (field === undefined) return { ok: false, found: "path", path: path.trim() };
  const amount = amountOf(value);
  const most = field.kind === "number" ? field.most : Infinity;
  return amount === undefined || amount > most
    ? { ok: false, found: "value", path: path.trim() }
    : { ok: true, price: { path: path.trim(), value: amount } };
};
