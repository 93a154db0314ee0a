/**
 * What of a catalog can be used: entries that are sound, entries with faults, and prices that are missing.
 * A fault in one entry does not hide the others: the sound entries are read again without the faulty ones.
 */
import { type Fault, pointer } from "../estimate/faults.js";
import { csvInput } from "./csv.js";
import { DEPARTMENTS, type Department, type Named, type Unpriced } from "./offers/price.js";
import type { EquipmentOffer } from "./offers/supplies.js";
import { type PriceCatalog, parsePriceCatalog } from "./price-catalog.js";
import { isRecord, MOST_FAULTS } from "./shape-faults.js";

/** One sound entry. */
export interface UsableEntry {
  readonly department: Department;
  readonly name: string;
  readonly label: string;
  /** How many of its prices are missing. */
  readonly unpriced: number;
}

export interface CatalogReport {
  readonly usable: readonly UsableEntry[];
  /** At most `MOST_FAULTS`. */
  readonly malformed: readonly Fault[];
  /** Missing prices of usable entries, each with what to add. */
  readonly unpriced: readonly Unpriced[];
  /** The catalog of the usable entries; absent when currency or name cannot be read. */
  readonly catalog?: PriceCatalog;
}

/** Checks a catalog in its JSON form. Pointers are from the catalog itself. */
export function checkCatalog(input: unknown): CatalogReport {
  const sieve = new Sieve(input);
  const faults: Fault[] = [];
  // Each round takes at least one entry out; one without faults, or with faults outside of entries only, is the last.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const reading = parsePriceCatalog(sieve.rest(), "", sieve.namesTakenOut());
    if (!("faults" in reading)) return report(reading.catalog, faults, (at) => sieve.original(at));
    faults.push(...reading.faults.map((fault) => ({ ...fault, at: sieve.original(fault.at) })));
    if (!sieve.takeOut(reading.faults)) break;
  }
  return { usable: [], malformed: faults.slice(0, MOST_FAULTS), unpriced: [] };
}

/** Rounds of taking out faulty entries, each up to `MOST_FAULTS`; past this, too little is sound. Assumption. */
const MOST_ROUNDS = 20;

/** Checks a catalog in its CSV form; faults name line and column. */
export function checkCsvCatalog(text: string): CatalogReport {
  const { input, faults, locate } = csvInput(text);
  if (input === undefined) return { usable: [], malformed: faults, unpriced: [] };
  const checked = checkCatalog(input);
  return { ...checked, malformed: [...faults, ...checked.malformed.map(locate)].slice(0, MOST_FAULTS) };
}

/** Takes faulty entries out of a catalog and keeps account of where the others stood. */
class Sieve {
  private readonly kept = new Map<string, number[]>();
  private readonly dropped = new Set<string>();
  private readonly names: string[] = [];

  constructor(private readonly input: unknown) {
    if (!isRecord(input)) return;
    for (const [key, value] of Object.entries(input)) {
      if (Array.isArray(value)) this.kept.set(key, [...value.keys()]);
    }
  }

  rest(): unknown {
    if (!isRecord(this.input)) return this.input;
    const entries = Object.entries(this.input).filter(([key]) => !this.dropped.has(key));
    return Object.fromEntries(
      entries.map(([key, value]) => [
        key,
        Array.isArray(value) ? (this.kept.get(key) ?? []).map((index) => value[index]) : value,
      ]),
    );
  }

  namesTakenOut(): readonly string[] {
    return this.names;
  }

  /** The pointer in the input as it was given. */
  original(at: string): string {
    const [, key, index, ...more] = at.split("/");
    const was = key === undefined || index === undefined ? undefined : this.kept.get(key)?.[Number(index)];
    return was === undefined ? at : [pointer("", key as string, was), ...more].join("/");
  }

  /** Takes out the entries and unknown fields that the faults name. False when none could be. */
  takeOut(faults: readonly Fault[]): boolean {
    const doomed = new Map<string, Set<number>>();
    let any = false;
    for (const { at, code } of faults) {
      const [, step = "", index] = at.split("/");
      const key = step.replaceAll("~1", "/").replaceAll("~0", "~");
      if (index !== undefined && this.kept.get(key)?.[Number(index)] !== undefined) {
        doomed.set(key, (doomed.get(key) ?? new Set()).add(Number(index)));
      } else if (index === undefined && code === "unknown-field" && !this.dropped.has(key)) {
        this.dropped.add(key);
        any = true;
      }
    }
    for (const [key, indices] of doomed) {
      any = true;
      const before = this.kept.get(key) ?? [];
      if (key === "lumber") this.noteNames(before.filter((_, index) => indices.has(index)));
      this.kept.set(
        key,
        before.filter((_, index) => !indices.has(index)),
      );
    }
    return any;
  }

  private noteNames(indices: readonly number[]): void {
    const lumber = (this.input as { readonly lumber: readonly unknown[] }).lumber;
    for (const index of indices) {
      const entry = lumber[index];
      if (isRecord(entry) && typeof entry.name === "string") this.names.push(entry.name);
    }
  }
}

function report(catalog: PriceCatalog, malformed: readonly Fault[], original: (at: string) => string): CatalogReport {
  const usable: UsableEntry[] = [];
  const unpriced: Unpriced[] = [];
  for (const department of DEPARTMENTS) {
    for (const offer of catalog[department] as readonly Named[]) {
      const missing = missingPrices(department, offer);
      unpriced.push(...missing.map((price) => ({ ...price, at: original(price.at) })));
      usable.push({ department, name: offer.name, label: offer.label, unpriced: missing.length });
    }
  }
  return { usable, malformed: malformed.slice(0, MOST_FAULTS), unpriced, catalog };
}

/** A machine that is only hired, or only sold, lacks nothing. */
function missingPrices(department: Department, offer: Named): readonly Unpriced[] {
  if (department === "equipment") {
    const { hirePerDay, purchase } = offer as EquipmentOffer;
    if (hirePerDay.kind === "priced" || purchase.kind === "priced") return [];
  }
  return [...pricesIn(offer)];
}

function* pricesIn(value: unknown): Generator<Unpriced> {
  if (Array.isArray(value)) {
    for (const item of value) yield* pricesIn(item);
  } else if (isRecord(value)) {
    if (value.kind === "unpriced") yield value as unknown as Unpriced;
    else for (const key of PRICE_HOLDERS) if (Object.hasOwn(value, key)) yield* pricesIn(value[key]);
  }
}

/** Fields of the typed offers below which prices stand; quantities are never walked into. */
const PRICE_HOLDERS = [
  ...["price", "sold", "lengths", "packs", "cans", "sheets", "trims"],
  ...["closures", "sealant", "underlay", "hirePerDay", "purchase"],
];
