/** What a request may say only once: machines, coverings compared, taxes of one name, the currency. */
import { type Fault, pointer } from "../faults.js";

/** The parts of a request that are looked at. */
interface Given {
  readonly shop?: { readonly equipment?: readonly { readonly item: string }[] | undefined } | undefined;
  readonly options?: { readonly coverings?: readonly string[] | undefined } | undefined;
  readonly currency?: string | undefined;
}

/** Prices as they were read. */
interface Priced {
  readonly currency: string;
  readonly taxes: readonly { readonly name: string }[];
}

/** A fault for each that is given a second time, at its second place. @param priced - Absent where the catalog has faults. */
export function twiceFaults({ shop, options, currency }: Given, priced: Priced | undefined): Fault[] {
  const other: Fault[] =
    priced && currency !== undefined && currency !== priced.currency
      ? [
          {
            code: "currency-mix",
            at: "/currency",
            wrong: `The request is in ${currency}, and its catalog in ${priced.currency}.`,
            cure: "Leave the currency out: the catalog says it.",
          },
        ]
      : [];
  const machines = (shop?.equipment ?? []).map(({ item }) => item);
  return [
    ...twice(machines, (i) => pointer("/shop/equipment", i, "item")),
    ...twice(options?.coverings ?? [], (i) => pointer("/options/coverings", i)),
    ...twice(
      (priced?.taxes ?? []).map(({ name }) => name),
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
