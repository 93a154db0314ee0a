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
  jointerWidth: "dress.jointerWidest",
  heaviestFed: "dress.heaviest",
  longestFed: "dress.longest",
} as const satisfies Partial<Record<keyof ShopShape, string>>;

/** No piece is narrow enough for a jointer that is not there. */
const NO_WIDTH: QuantityText = "0 in";

type Given = Readonly<Record<string, AssumptionText>>;

/** The request's assumptions with the limits of its shop among them; a limit that is given in both places is a fault. */
export function withShopLimits(
  shop: ShopShape | undefined,
  assumptions: Given = {},
): { readonly given: Given; readonly faults: readonly Fault[] } {
  const widths = (Object.keys(LIMITS) as (keyof typeof LIMITS)[]).flatMap((field) => {
    const text: QuantityText | undefined = shop?.[field];
    return text === undefined ? [] : [{ field: field as keyof ShopShape, name: LIMITS[field] as string, text }];
  });
  const none = { field: "jointer", name: LIMITS.jointerWidth, text: NO_WIDTH } as const;
  const limits = [...widths, ...(shop?.jointer === "none" ? [none] : [])];
  const faults = limits
    .filter(({ name }, i) => Object.hasOwn(assumptions, name) || limits.findIndex((one) => one.name === name) < i)
    .map(({ field, name }): Fault => {
      const wrong = `${name} is given twice: here and ${Object.hasOwn(assumptions, name) ? "under assumptions" : "as a width"}.`;
      return { code: "duplicate-name", at: pointer("/shop", field), wrong, cure: "Leave one of the two out." };
    });
  return { given: { ...Object.fromEntries(limits.map(({ name, text }) => [name, text])), ...assumptions }, faults };
}
