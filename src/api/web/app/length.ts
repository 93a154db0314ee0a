/** Lengths in millimetres for drawings alone: floats, never printed, never sent. */
import { parseQuantity, TextFault } from "../../../estimate/quantity/text.js";
import { unit } from "../../../estimate/quantity/unit.js";
import { isFields, type Json } from "./json.js";

/** A length as it was typed, or undefined where it can't be read yet. */
export function millimetres(text: Json): number | undefined {
  const words = isFields(text) ? `${text.value} ${text.unit}` : text;
  if (typeof words !== "string") return undefined;
  const found = parseQuantity(words, unit("mm"));
  return found instanceof TextFault ? undefined : found.value.toNumber();
}
