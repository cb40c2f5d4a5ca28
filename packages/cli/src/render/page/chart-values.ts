// Values of a chart as they are printed: percent, or a pressure in the unit of the page.

import { type PressureUnit, fromSi } from "@sealtrend/core";
import type { ChartQuantity } from "./page-model.ts";
import { fixed } from "../words.ts";

export interface Told {
  readonly quantity: ChartQuantity;
  /** Of pressures. */
  readonly unit: PressureUnit;
}

/** In the unit it is printed in. */
export const shownValue = (value: number, { quantity, unit }: Told): number =>
  quantity === "pressure" ? fromSi(value, unit) : value * 100;

export const shownUnit = ({ quantity, unit }: Told): string => (quantity === "pressure" ? unit : "%");

/** The number alone, to what a gauge can carry. */
export const valueText = (value: number, told: Told): string => {
  const shown = shownValue(value, told);
  const places = told.quantity === "pressure" ? (Math.abs(shown) < 60 ? 1 : 0) : 1;
  const text = fixed(shown, places);
  return told.quantity === "against-others" && Number(text) > 0 ? `+${text}` : text;
};
