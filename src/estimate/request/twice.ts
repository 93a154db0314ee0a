/** What a request may say only once: machines, coverings compared, taxes of one name, the currency. */
import { type Fault, pointer } from "../faults.js";
import type { EstimateShape } from "./request.js";

/** A fault for each that is given a second time, at its second place. */
export function twiceFaults({ shop, options, catalog, currency }: EstimateShape): Fault[] {
  const taxes = catalog && "taxes" in catalog ? (catalog.taxes ?? []) : [];
  const priced = catalog && "currency" in catalog ? catalog.currency : undefined;
  const other =
    priced !== undefined && currency !== undefined && currency !== priced
      ? [
          {
            code: "currency-mix" as const,
            at: "/currency",
            wrong: `The request is in ${currency}, and its catalog in ${priced}.`,
            cure: "Leave the currency out: the catalog says it.",
          },
        ]
      : [];
  return [
    ...twice(shop?.equipment ?? [], "/shop/equipment", "item"),
    ...twice(
      (options?.coverings ?? []).map((kind) => ({ kind })),
      "/options/coverings",
    ),
    ...twice(taxes, "/catalog/taxes", "name"),
    ...other,
  ];
}

function twice(list: readonly object[], at: string, field?: string): Fault[] {
  const known = new Set<string>();
  return list.flatMap((one, i): Fault[] => {
    const name = String(Object.entries(one).find(([key]) => key === (field ?? key))?.[1]);
    if (!known.has(name)) {
      known.add(name);
      return [];
    }
    const place = field === undefined ? pointer(at, i) : pointer(at, i, field);
    return [
      { code: "duplicate-name", at: place, wrong: `${name.slice(0, 60)} is given twice.`, cure: "Give it once." },
    ];
  });
}
