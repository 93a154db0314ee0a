/**
 * What of a catalog can be used: entries that are sound, entries with faults, and prices that are missing.
 * A fault in one entry does not hide the others: each is read alone, then the sound ones together.
 */
import { type Fault, pointer } from "../estimate/faults.js";
import { csvInput } from "./csv.js";
import { DEPARTMENTS, type Department, MOST_OFFERS, type Named, type Unpriced } from "./offers/price.js";
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

/** What of a price list is usable, and what is malformed. */
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
  const whole = parsePriceCatalog(input);
  if (!("faults" in whole)) return report(whole.catalog, [], (at) => at);
  const nothing = { usable: [], malformed: whole.faults, unpriced: [] };
  if (!isRecord(input) || LISTS.some((key) => listOf(input, key).length > MOST_OFFERS)) return nothing;
  const sieve = new Sieve(input);
  return sieve.headReads() ? sieve.sift() : nothing;
}

/** Checks a catalog in its CSV form; faults name line and column. */
export function checkCsvCatalog(text: string): CatalogReport {
  const { input, faults, locate } = csvInput(text);
  if (input === undefined) return { usable: [], malformed: faults, unpriced: [] };
  const checked = checkCatalog(input);
  return { ...checked, malformed: [...faults, ...checked.malformed.map(locate)].slice(0, MOST_FAULTS) };
}

/** Lists of entries, lumber first: coverings refer to it. */
const LISTS = [...DEPARTMENTS, "taxes"] as const;
type ListKey = (typeof LISTS)[number];
type Catalog = Readonly<Record<string, unknown>>;

/** Rounds of taking out entries that are sound alone but not together, such as two of one name. Assumption. */
const MOST_ROUNDS = 20;

function listOf(input: Catalog, key: ListKey): readonly unknown[] {
  const list = Object.hasOwn(input, key) ? input[key] : undefined;
  return Array.isArray(list) ? list : [];
}

/** Reads each entry alone, then the sound ones together. */
class Sieve {
  private readonly faults: Fault[] = [];
  /** Indices of sound entries by list. */
  private readonly kept = new Map<ListKey, number[]>();
  private readonly head: Catalog;

  constructor(private readonly input: Catalog) {
    const isList = (key: string) => LISTS.some((list) => list === key) && Array.isArray(input[key]);
    this.head = Object.fromEntries(Object.entries(input).filter(([key]) => !isList(key)));
  }

  /** Name, currency and note; unknown fields beside them are faults that hinder nothing. */
  headReads(): boolean {
    const reading = parsePriceCatalog(this.head);
    if ("faults" in reading) this.faults.push(...reading.faults);
    return this.faults.every(({ code, at }) => code === "unknown-field" && at.split("/").length === 2);
  }

  sift(): CatalogReport {
    const { name, currency } = this.head;
    const lumberNames = listOf(this.input, "lumber").flatMap((entry) =>
      isRecord(entry) && typeof entry.name === "string" ? entry.name : [],
    );
    for (const key of LISTS) {
      const sound = listOf(this.input, key).map((entry, index) => {
        const reading = parsePriceCatalog({ name, currency, [key]: [entry] }, "", lumberNames);
        if (!("faults" in reading)) return true;
        this.faults.push(...reading.faults.map((fault) => movedTo(fault, key, index)));
        return false;
      });
      this.kept.set(
        key,
        [...sound.keys()].filter((index) => sound[index]),
      );
      // Entries without a name are given one among the others, and a deck may go by it.
      if (key === "lumber") lumberNames.push(...(this.settle(lumberNames)?.lumber ?? []).map((offer) => offer.name));
    }
    const catalog = this.settle(lumberNames);
    if (catalog) return report(catalog, this.faults, (at) => this.original(at));
    return { usable: [], malformed: this.faults.slice(0, MOST_FAULTS), unpriced: [] };
  }

  private rest(): Catalog {
    const { name, currency, note } = this.head;
    const lists = [...this.kept].map(([key, indices]) => [key, indices.map((index) => listOf(this.input, key)[index])]);
    return { name, currency, note, ...Object.fromEntries(lists) };
  }

  /** The kept entries read together, those taken out that are in the way of others. */
  private settle(lumberNames: readonly string[]): PriceCatalog | undefined {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const reading = parsePriceCatalog(this.rest(), "", lumberNames);
      if (!("faults" in reading)) return reading.catalog;
      this.faults.push(...reading.faults.map((fault) => ({ ...fault, at: this.original(fault.at) })));
      this.takeOut(reading.faults);
    }
    return undefined;
  }

  private takeOut(faults: readonly Fault[]): void {
    for (const key of LISTS) {
      const doomed = new Set(
        faults.map(({ at }) => at.split("/")).flatMap(([, list, i]) => (list === key ? Number(i) : [])),
      );
      this.kept.set(
        key,
        (this.kept.get(key) ?? []).filter((_, index) => !doomed.has(index)),
      );
    }
  }

  /** The pointer in the input as it was given. */
  private original(at: string): string {
    const [, key, index, ...more] = at.split("/");
    const was = this.kept.get(key as ListKey)?.[Number(index)];
    return was === undefined ? at : [pointer("", key as string, was), ...more].join("/");
  }
}

/** A fault of an entry that was read alone, at the entry's own place. */
function movedTo(fault: Fault, key: ListKey, index: number): Fault {
  return { ...fault, at: fault.at.replace(pointer("", key, 0), pointer("", key, index)) };
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
