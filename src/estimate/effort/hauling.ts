/**
 * Moving weight about the yard: by hand, cart, winch or tractor. A load goes there and the empty hands come back; what
 * weighs more than one load takes more of them.
 */
import type { Assumed } from "../request/assumed.js";
import type { CarryMeans, LogMeans } from "../request/shop.js";
import type { SoundLog } from "../salvage/sound-wood.js";
import { type Cell, greatest, number, type Operand, over, plus, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";

/** Prefix of the assumptions of each means. */
const RATES: Readonly<Record<CarryMeans, string>> = { hand: "carry", cart: "cart", winch: "winch", tractor: "tractor" };

const ONE_PERSON = number("1 people");

/** Carrying over one distance. */
export interface Carrying {
  /** Weight that goes at once. */
  readonly load: Cell;
  /** Person-time of a load, there and back, up and down. */
  readonly each: Cell;
}

/** Lays what a load takes over a distance; found again when it is laid already. */
export function layCarrying(
  { sheet, assumed }: { readonly sheet: Sheet; readonly assumed: Assumed },
  name: string,
  means: CarryMeans,
  distance: Cell,
): Carrying {
  const rate = RATES[means];
  const load = assumed.cell(`${rate}.load`);
  const walk = over(times(number("2"), distance), assumed.cell(`${rate}.pace`));
  const each =
    sheet.find(name) ??
    sheet.lay(name, plus(times(walk, ONE_PERSON), assumed.cell(`${rate}.handling`)), {
      label: `a load there and back, ${means === "hand" ? "by hand" : `by ${means}`}`,
      display: "person-min",
    });
  return { load, each };
}

/** Lays the person-hours to get each log to the mill. A log over the load of the means goes slower by as much. */
export function layGetOut(
  sheet: Sheet,
  assumed: Assumed,
  means: LogMeans,
  logs: readonly SoundLog[],
): ReadonlyMap<string, Cell> {
  const rate = (of: string): Cell => assumed.cell(`getOut.${means}.${of}`);
  return new Map(
    logs.map((log) => {
      const walk = over(log.distance ?? assumed.cell("getOut.distance"), rate("pace"));
      const slower = greatest(number("1"), over(log.weight, rate("load")));
      const formula: Operand = plus(rate("rig"), times(walk, rate("people"), slower));
      return [
        log.name,
        sheet.lay(`logs.${log.name}.getOut`, formula, { label: "get it to the mill", display: "person-min" }),
      ];
    }),
  );
}

/**
 * Fuel of a means for the hours of a stage; undefined where it burns none.
 * @param people - At work with it.
 */
export function fuelAt(
  { sheet, assumed }: { readonly sheet: Sheet; readonly assumed: Assumed },
  means: CarryMeans,
  hours: Operand,
  people: Operand = ONE_PERSON,
): Operand | undefined {
  if (means !== "winch" && means !== "tractor") return undefined;
  const rate = assumed.cell(`${means}.fuel`);
  // A winch that is wound by hand burns none, and has no line.
  return sheet.decide(rate).isZero() ? undefined : times(over(hours, people), rate);
}
