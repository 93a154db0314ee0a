/** Assumptions on the sheet: the defaults of the catalog, replaced by what the request says. Each is laid when first asked for. */
import { ASSUMPTIONS, assumptionOf } from "../../catalog/assumptions.js";
import type { Spread } from "../../catalog/finishes.js";
import { parseText, type QuantityText } from "../../catalog/reading.js";
import { type Citation, SOURCES } from "../../catalog/sources.js";
import { type Fault, nearest, pointer } from "../faults.js";
import { metricDefault } from "../quantity/display.js";
import type { Quantity } from "../quantity/quantity.js";
import { exactly, type MeasureSystem, TextFault } from "../quantity/text.js";
import type { Cell } from "../sheet/expression.js";
import type { Range, Sheet } from "../sheet/sheet.js";
import { type CalibrationShape, calibrated } from "./calibration.js";

/** What the request gives for an assumption. */
export type AssumptionText =
  | QuantityText
  | { readonly low: QuantityText; readonly likely: QuantityText; readonly high: QuantityText };

/** Assumptions as cells: laid when first asked for, the user's values in the place of the likely ones. */
export class Assumed {
  readonly faults: Fault[] = [];
  private readonly used = new Set<string>();
  private readonly timed = new Map<string, { readonly calibration: CalibrationShape; readonly at: string }>();

  constructor(
    private readonly sheet: Sheet,
    private readonly given: Readonly<Record<string, AssumptionText>> = {},
    timed: readonly CalibrationShape[] = [],
    private readonly system: MeasureSystem = "inch-pound",
  ) {
    for (const [i, calibration] of timed.entries()) this.time(calibration, pointer("/calibration", i));
  }

  /** The cell of a catalog assumption. @throws Error on a name that the catalog has not: a bug. */
  cell(name: string): Cell {
    const known = this.sheet.find(name);
    if (known) return known;
    const row = assumptionOf(name);
    if (!row) throw new Error(`no assumption is called ${name}`);
    const from: Citation = row.part === undefined ? { source: row.source } : { source: row.source, part: row.part };
    return this.spread(name, row.label, [row.low, row.likely, row.high], from);
  }

  /** The cell of an assumption that comes from another table, such as a mill's. */
  spread(name: string, label: string, [low, likely, high]: Spread, from: Citation): Cell {
    const known = this.sheet.find(name);
    if (known) return known;
    const range = { low: this.own(low), likely: this.own(likely), high: this.own(high) };
    const told = this.told(name, range);
    const source = told ? (this.timed.has(name) ? "jobs timed by you" : "as given in the request") : citation(from);
    return this.sheet.assumption(name, told ?? range, {
      label,
      source,
      display: range.likely.written ?? range.likely.unit,
    });
  }

  /** A default of the tables in the measures of the project. */
  private own(text: string): Quantity {
    return this.system === "metric" ? metricDefault(exactly(text)) : exactly(text);
  }

  /** What was given and nothing asked for: what is assumed, in words, and where it stands. Ask when everything is laid. */
  unused(): { readonly label: string; readonly at: string }[] {
    return this.idle().flatMap(({ name, at }) => {
      const row = assumptionOf(name);
      return row ? [{ label: row.label, at }] : [];
    });
  }

  /** Given names that no assumption has. Ask when everything is laid. */
  unknownFaults(): Fault[] {
    const names = [...ASSUMPTIONS.map((row) => row.name), ...this.used];
    return this.idle()
      .filter(({ name }) => !assumptionOf(name))
      .map(({ name, at }) => {
        const near = nearest(name, names);
        const cure = near ? `Did you mean ${near}?` : "GET /v1/assumptions lists all names.";
        return {
          code: "unknown-name",
          at,
          wrong: `No assumption is called ${name.slice(0, 80)}.`,
          cure,
        };
      });
  }

  private idle(): { readonly name: string; readonly at: string }[] {
    const given = [
      ...Object.keys(this.given).map((name) => ({ name, at: pointer("/assumptions", name) })),
      ...[...this.timed].map(([name, { at }]) => ({ name, at: pointer(at, "rate") })),
    ];
    return given.filter(({ name }) => !this.used.has(name));
  }

  /** Keeps a calibration until its rate is laid. */
  private time(calibration: CalibrationShape, at: string): void {
    const { rate } = calibration;
    if (!this.timed.has(rate) && !Object.hasOwn(this.given, rate)) {
      this.timed.set(rate, { calibration, at });
      return;
    }
    const wrong = `${rate.slice(0, 80)} is given twice.`;
    const cure = "Put all its jobs in one calibration, and leave it out of the assumptions.";
    this.faults.push({ code: "duplicate-name", at: pointer(at, "rate"), wrong, cure });
  }

  private told(name: string, like: Range): Range | undefined {
    const timed = this.timed.get(name);
    if (timed) {
      this.used.add(name);
      const found = calibrated(timed.calibration, like, timed.at);
      if ("range" in found) return found.range;
      this.faults.push(...found.faults);
      return undefined;
    }
    const text = Object.hasOwn(this.given, name) ? this.given[name] : undefined;
    this.used.add(name);
    if (text === undefined) return undefined;
    const at = pointer("/assumptions", name);
    if (typeof text !== "object" || !("likely" in text)) {
      const known = this.read(text, like.likely, at);
      return known && { low: known, likely: known, high: known };
    }
    const sides = (["low", "likely", "high"] as const).map((side) => this.read(text[side], like.likely, at));
    const [low, likely, high] = sides;
    if (!low || !likely || !high) return undefined;
    if (low.value.gt(likely.value) || likely.value.gt(high.value)) {
      const wrong = `${name} does not rise from low through likely to high.`;
      this.faults.push({ code: "out-of-range", at, wrong, cure: "Give low ≤ likely ≤ high." });
      return undefined;
    }
    return { low, likely, high };
  }

  private read(text: QuantityText, like: Quantity, at: string): Quantity | undefined {
    const found = parseText(text, like.written ?? like.unit);
    if (found instanceof TextFault) {
      this.faults.push({ code: found.code, at, wrong: found.wrong, cure: found.cure });
      return undefined;
    }
    if (!found.value.isNegative()) return found;
    this.faults.push({ code: "out-of-range", at, wrong: "An assumption is negative.", cure: "Give zero or more." });
    return undefined;
  }
}

/** A citation in words. */
export function citation(from: Citation): string {
  const { title, known } = SOURCES[from.source];
  const part = from.part ? `, ${from.part}` : "";
  return known === "assumption" ? `assumption${part}` : `${title}${part}`;
}
