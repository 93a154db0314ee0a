/** Best paths through a log: from the butt bolt after bolt, some lengths thrown away. */
import type { Arc, LogTable, Skip } from "./bucking.js";

/**
 * The best steps onward from each place, for some of a log's bolts and what each is worth. Bolts and lengths thrown away lead to
 * later places, so places are reckoned from the last.
 */
export class Onward {
  /** Best worth from each place on. */
  readonly after: Float64Array;
  /** The step that gives it: a bolt's number, or -1 where a length is thrown away, and the place after it. */
  readonly #arc: Int32Array;
  readonly #to: Int32Array;
  /** By place: numbers of the first bolt and the first skip from there on. */
  readonly #firstArc: Int32Array;
  readonly #firstSkip: Int32Array;

  /**
   * @param arcs - By place, from the butt.
   * @param values - Worth of each. The caller may lower some and `settle` them.
   */
  constructor(
    readonly log: LogTable,
    readonly arcs: readonly Arc[],
    readonly values: Float64Array,
  ) {
    this.after = new Float64Array(log.places);
    this.#arc = new Int32Array(log.places);
    this.#to = new Int32Array(log.places);
    this.#firstArc = firstAt(log.places, arcs);
    this.#firstSkip = firstAt(log.places, log.skips);
    for (let place = log.places - 1; place >= 0; place--) this.#reckon(place);
  }

  #reckon(place: number): void {
    const { after, arcs, values, log } = this;
    let [best, choice, towards] = [0, -1, -1];
    for (let k = (this.#firstSkip[place + 1] as number) - 1; k >= (this.#firstSkip[place] as number); k--) {
      const { to } = log.skips[k] as Skip;
      if ((after[to] as number) <= best) continue;
      best = after[to] as number;
      towards = to;
    }
    for (let i = (this.#firstArc[place + 1] as number) - 1; i >= (this.#firstArc[place] as number); i--) {
      const own = values[i] as number;
      if (own <= 0) continue;
      const { to } = arcs[i] as Arc;
      const value = own + (to >= 0 ? (after[to] as number) : 0);
      if (value <= best) continue;
      best = value;
      choice = i;
      towards = to;
    }
    after[place] = best;
    this.#arc[place] = choice;
    this.#to[place] = towards;
  }

  /**
   * Reckons the places anew that some bolts led on from, these worth less now and no other one more. A step that is worth what it
   * was is still the best one.
   */
  settle(fell: readonly number[]): void {
    const lower = new Uint8Array(this.log.places);
    let last = -1;
    for (const i of fell) last = Math.max(last, (this.arcs[i] as Arc).from);
    for (let place = last; place >= 0; place--) {
      const [arc, to] = [this.#arc[place] as number, this.#to[place] as number];
      if (!(to >= 0 && lower[to] === 1) && !(arc >= 0 && fell.includes(arc))) continue;
      const before = this.after[place] as number;
      this.#reckon(place);
      if ((this.after[place] as number) < before) lower[place] = 1;
    }
  }

  /** Worth of the best path from the butt. */
  get best(): number {
    return this.after[0] ?? 0;
  }

  /** Numbers of its bolts. */
  path(): number[] {
    const path: number[] = [];
    for (let place = 0; place >= 0 && place < this.log.places; place = this.#to[place] as number) {
      if ((this.#arc[place] as number) >= 0) path.push(this.#arc[place] as number);
    }
    return path;
  }
}

/** Number of the first step from each place or a later one; steps stand by place. */
function firstAt(places: number, steps: readonly { readonly from: number }[]): Int32Array {
  const first = new Int32Array(places + 1);
  let k = 0;
  for (let place = 0; place <= places; place++) {
    while (k < steps.length && (steps[k] as { from: number }).from < place) k++;
    first[place] = k;
  }
  return first;
}

/** Best worth of what leads to each place from the butt. */
export function toward(log: LogTable, arcs: readonly Arc[], values: Float64Array): Float64Array {
  const before = new Float64Array(log.places).fill(Number.NEGATIVE_INFINITY);
  if (log.places > 0) before[0] = 0;
  let skip = 0;
  let i = 0;
  for (let place = 0; place < log.places; place++) {
    const here = before[place] as number;
    for (; skip < log.skips.length && (log.skips[skip] as Skip).from === place; skip++) {
      const { to } = log.skips[skip] as Skip;
      if (here > (before[to] as number)) before[to] = here;
    }
    for (; i < arcs.length && (arcs[i] as Arc).from === place; i++) {
      const { to } = arcs[i] as Arc;
      if (to >= 0 && here + (values[i] as number) > (before[to] as number)) before[to] = here + (values[i] as number);
    }
  }
  return before;
}
