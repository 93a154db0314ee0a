/** What the machines of the shop take, as the request gives it: each limit stands in the place of an assumption. */
import type { QuantityText } from "../../catalog/reading.js";
import { type Fault, pointer } from "../faults.js";
import type { AssumptionText } from "./assumed.js";
import type { ShopShape } from "./shop.js";

const LIMITS = {
  crosscutDepth: "cut.depth",
  deepestRip: "dress.deepestRip",
  planerWidth: "dress.widest",
  planerDepth: "dress.thickest",
  heaviestFed: "dress.heaviest",
  longestFed: "dress.longest",
} as const satisfies Partial<Record<keyof ShopShape, string>>;

type Given = Readonly<Record<string, AssumptionText>>;

/** The request's assumptions with the limits of its shop among them; a limit that is given in both places is a fault. */
export function withShopLimits(
  shop: ShopShape | undefined,
  assumptions: Given = {},
): { readonly given: Given; readonly faults: readonly Fault[] } {
  const limits = (Object.keys(LIMITS) as (keyof typeof LIMITS)[]).flatMap((field) => {
    const text: QuantityText | undefined = shop?.[field];
    return text === undefined ? [] : [{ field, name: LIMITS[field], text }];
  });
  const faults = limits
    .filter(({ name }) => Object.hasOwn(assumptions, name))
    .map(({ field, name }): Fault => {
      const wrong = `${name} is given twice: here and under assumptions.`;
      return { code: "duplicate-name", at: pointer("/shop", field), wrong, cure: "Leave one of the two out." };
    });
  return { given: { ...Object.fromEntries(limits.map(({ name, text }) => [name, text])), ...assumptions }, faults };
}
