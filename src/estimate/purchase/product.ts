/** An amount as a person multiplies it: the measure that is paid for, and the price by its own unit. */
import type { Charged } from "../../catalog/offers/price.js";
import { type Decimal, ONE } from "../quantity/decimal.js";
import { inUnit, type Quantity } from "../quantity/quantity.js";
import { placesFor } from "../quantity/text.js";
import { minorDigits, NUMBER, type Unit, unit, unitOver } from "../quantity/unit.js";
import { aside } from "../sheet/aside.js";
import type { Cell } from "../sheet/expression.js";

/** What an amount is laid as the product of. */
export interface Paid {
  /** Sticks, pieces, a volume, a length. */
  readonly measure: Cell;
  /** Of one of it. */
  readonly price: Cell;
  /** Factor on all prices; 1 when absent. */
  readonly level?: Cell;
  /** Where the price of one comes of a rate: one for each number that a price holds from. */
  readonly charged?: readonly Charged[];
}

/** Two numbers whose product is the amount to the minor unit. */
export interface Product {
  /** `12.4 bf`; in the unit below the price's, or as it is counted. */
  readonly measure: Quantity;
  /** `2.10 USD/bf`, exact, the level of prices in it. */
  readonly price: Quantity;
}

/** Places after the point that are tried; more than any number of the sheet has in front of them. */
const MOST_PLACES = 20;

/**
 * The product that an amount is, with no more places of the measure than it takes. Undefined where it is none: of packs, and
 * where the user has put an amount of their own.
 */
export function productOf({ paid, amount }: { readonly paid?: Paid; readonly amount?: Cell }): Product | undefined {
  if (!paid || !amount) return undefined;
  const { measure, level } = paid;
  const [by, each] = inOwnUnit(paid);
  const currency = amount.display.symbol;
  const below = unitOver(unit(currency), each.unit);
  // A share is told in per cent, a price of one by the number.
  const told = below.dimension === "" && measure.display.dimension === "" ? measure.display : below;
  const inForce = each.value.times(level ? aside(level) : ONE);
  const value = inUnit(by ?? held(measure), told);
  const places = placesThatGive(aside(amount), currency, { value, told, price: inForce });
  if (places === undefined) return undefined;
  return { measure: { value: value.toDecimalPlaces(places), unit: told }, price: { value: inForce, unit: each.unit } };
}

/** What a cell holds now, in its own unit. */
const held = (cell: Cell): Quantity => ({ value: aside(cell), unit: cell.unit });

/** What comes of a rate as that rate and what it is charged on; nothing else than the price of one where that is the user's own. */
function inOwnUnit({ measure, price, charged = [] }: Paid): readonly [Quantity | undefined, Quantity] {
  const one = inUnit(held(price), price.display);
  const same = (of: Decimal) => of.minus(one).abs().lt("1e-12");
  const found = charged.find(({ value }) => same(value));
  if (!found) return [undefined, { value: one, unit: price.display }];
  const { rate, much } = found;
  const written = rate.written ?? rate.unit;
  return [
    { value: aside(measure).times(much.value), unit: much.unit },
    { value: inUnit(rate, written), unit: written },
  ];
}

function placesThatGive(
  amount: Decimal,
  currency: string,
  { value, told, price }: { readonly value: Decimal; readonly told: Unit; readonly price: Decimal },
): number | undefined {
  const digits = minorDigits(currency) ?? 2;
  for (let places = placesFor(told); places <= MOST_PLACES; places++) {
    const counted = inUnit({ value: value.toDecimalPlaces(places), unit: told }, told.dimension === "" ? NUMBER : told);
    if (counted.times(price).toDecimalPlaces(digits).eq(amount)) return places;
  }
  return undefined;
}
