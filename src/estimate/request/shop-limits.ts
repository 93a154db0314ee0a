/** What the machines of the shop take, as the request gives it: each limit stands in the place of an assumption. */
import type { EquipmentItem } from "../../catalog/offers/supplies.js";
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

/** What a shop cannot also say of a machine that it has not: its limits, and on which terms it is had. */
const WITHOUT = [
  {
    machine: "mill",
    is: "mill",
    fields: [],
    items: ["chainsaw-mill", "manual-band-mill", "hydraulic-band-mill", "swing-blade-mill"],
  },
  { machine: "tableSaw", is: "table saw", fields: ["deepestRip"], items: ["table-saw"] },
  { machine: "planer", is: "planer", fields: ["planerWidth", "planerDepth"], items: ["planer"] },
  { machine: "jointer", is: "jointer", fields: [], items: ["jointer"] },
] as const satisfies readonly {
  readonly machine: keyof ShopShape;
  readonly is: string;
  readonly fields: readonly (keyof ShopShape)[];
  readonly items: readonly EquipmentItem[];
}[];

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
  faults.push(...lackingFaults(shop));
  return { given: { ...Object.fromEntries(limits.map(({ name, text }) => [name, text])), ...assumptions }, faults };
}

/** A machine that is not there has no limits, and is neither hired nor bought. */
function lackingFaults(shop: ShopShape | undefined): Fault[] {
  return WITHOUT.filter(({ machine }) => shop?.[machine] === "none").flatMap(({ machine, is, fields, items }) => {
    const named: readonly string[] = items;
    const places = [
      ...fields.filter((field) => shop?.[field] !== undefined).map((field) => pointer("/shop", field)),
      ...(shop?.equipment ?? []).flatMap(({ item }, i) =>
        named.includes(item) ? [pointer("/shop/equipment", i, "item")] : [],
      ),
    ];
    const cure = `Leave this out, or leave ${machine} out where there is one.`;
    return places.map((at): Fault => ({ code: "cannot-build", at, wrong: `The shop has no ${is}.`, cure }));
  });
}
