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
  const machines = (shop?.equipment ?? []).map(({ item }) => item);
  return [
    ...twice(machines, (i) => pointer("/shop/equipment", i, "item")),
    ...twice(options?.coverings ?? [], (i) => pointer("/options/coverings", i)),
    ...twice(
      taxes.map(({ name }) => name),
      (i) => pointer("/catalog/taxes", i, "name"),
    ),
    ...other,
  ];
}

function twice(names: readonly string[], place: (i: number) => string): Fault[] {
  return names.flatMap((name, i): Fault[] => {
    if (names.indexOf(name) === i) return [];
    const wrong = `${name.slice(0, 60)} is given twice.`;
    return [{ code: "duplicate-name", at: place(i), wrong, cure: "Give it once." }];
  });
}
