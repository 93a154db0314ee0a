/** One bolt at the mill, as JSON: its cuts in order, what each frees, strips and piece marks, and its end view. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import { boltSizes, endView } from "../../../estimate/drawing/end-view.js";
import { type Decimal, decimal, trimmed } from "../../../estimate/quantity/decimal.js";
import { displayUnits } from "../../../estimate/quantity/display.js";
import { inUnit } from "../../../estimate/quantity/quantity.js";
import { type MeasureSystem, marked, markedSmall, placesFor } from "../../../estimate/quantity/text.js";
import { unit } from "../../../estimate/quantity/unit.js";
import type { BoltSteps, SlabSteps, StripSteps } from "../../../estimate/salvage/explain-sawing.js";
import type { SawingProblem, SawLog } from "../../../estimate/salvage/sawing-problem.js";
import { endViewSvg } from "../end-view.js";
import { cutsFields, inRuns } from "./cut-pieces.js";
import { type MarkBook, markRuns } from "./marks.js";

const text = (describe: string) => z.string().describe(describe);

const StripSchema = z
  .strictObject({
    width: text("Rough width."),
    times: z.int().describe("Strips alike, side by side."),
    edges: z.array(z.string()).describe("Left edge of each, from the sawing axis as seen from the small end."),
    ...cutsFields,
  })
  .meta({ id: "Strip", description: "Strips ripped from a slab." });

const SlabSchema = z
  .strictObject({
    thickness: text("Rough thickness."),
    from: text("Lower face, above the sawing axis; negative below it."),
    to: text("Upper face, above the sawing axis."),
    onMill: z.boolean().describe("Whether it goes back on the mill to be ripped: it is deeper than the rip saw."),
    rips: z.int().describe("Rip cuts that it takes."),
    strips: z.array(StripSchema).describe("Side by side, equal neighbours together."),
    tally: measuredValue.describe("Rough lumber sawn so far in this plan, this slab included."),
  })
  .meta({ id: "Slab", description: "A slab, as it comes off the bolt." });

const CutSchema = z
  .strictObject({
    order: z.int().describe("1 for the opening cut."),
    height: text("Face that it leaves, above the sawing axis; negative below it."),
    drop: z
      .string()
      .nullable()
      .describe("How much lower than the cut before: what comes off and the kerf; null for the opening cut."),
    slab: z.int().nullable().describe("Which slab comes off, 1 for the first of `slabs`; null where it is waste."),
  })
  .meta({ id: "MillCut", description: "One cut of the mill through the whole width." });

export const BoltSchema = z
  .strictObject({
    from: text("Where it begins, from the log's small end."),
    to: text("Where it ends."),
    length: text("Its length."),
    smallDiameter: text("Wood at its small end, inside the bark."),
    sweep: text("Its own sweep, which its round wood is less by."),
    opening: text("First cut: the lower edge of its kerf above the sawing axis."),
    cuts: z.int().describe("Cuts of the mill through the whole width."),
    cutList: z.array(CutSchema).describe("Those cuts in the order made, from the top."),
    turns: z.int().describe("Cants laid on the mill again."),
    face: measuredValue.describe("All faces sawn by the mill, cants included."),
    slabs: z.array(SlabSchema).describe("From the top."),
    drawing: z.string().optional().describe("With include=drawings: its end view from the small end, as SVG."),
  })
  .meta({ id: "Bolt", description: "A length bucked from a log, and how it is sawn." });

/** What bolts are written with. */
export interface BoltWriting {
  readonly problem: SawingProblem;
  readonly system: MeasureSystem;
  readonly marks: MarkBook;
  /** Begins the ids within the images; without it none are drawn. */
  readonly drawings: string | undefined;
}

/** A bolt among those of its log, from the small end. */
export interface Place {
  readonly log: SawLog;
  /** From 1. */
  readonly number: number;
  readonly of: number;
}

/** Whole grid steps as lengths that a person marks. Keeps the tally, so bolts are written in the order of the work. */
export class BoltWriter {
  private readonly grid: Decimal;
  /** Texts of lengths by their steps: a plan has few lengths, many times. */
  private readonly longs = new Map<number, string>();
  private readonly smalls = new Map<number, string>();
  /** Grid cubes of rough lumber so far. */
  private sawn = 0;

  constructor(private readonly writing: BoltWriting) {
    this.grid = decimal(writing.problem.gridMm);
  }

  bolt(bolt: BoltSteps, place: Place): z.output<typeof BoltSchema> {
    const { z0, z1, opening, stackCuts, slabs, turns } = bolt;
    const { log } = place;
    const size = boltSizes(log, bolt);
    const milled = [...stackCuts, ...slabs.filter(({ onMill }) => onMill).flatMap(({ rips }) => rips)];
    const marks = slabs.map(({ strips }) => strips.map((strip) => this.marksOf(strip)));
    const shown = {
      from: this.long(z0),
      to: this.long(z1),
      length: this.long(z1 - z0),
      smallDiameter: this.mm(size.small.times(this.grid)),
      sweep: this.mm(size.sweep.times(this.grid)),
      opening: this.small(opening),
      cuts: stackCuts.length,
      cutList: this.cutList(bolt),
      turns,
      face: this.area(milled.reduce((sum, { area }) => sum + area, 0)),
      slabs: slabs.map((slab, i) => this.slab(slab, marks[i] as StripMarks[])),
    };
    const { drawings, system } = this.writing;
    if (drawings === undefined) return shown;
    const title = `${log.name}, bolt ${place.number} of ${place.of}, seen from its small end`;
    const drawing = endViewSvg(endView(this.writing.problem, log, bolt), {
      ...{ title, system, id: `${drawings}-${log.name}-${place.number}` },
      description: describe(shown, size.rot.isZero() ? undefined : this.mm(size.rot.times(this.grid))),
      strips: marks.map((strips) => strips.map((strip) => markRuns(strip))),
      heights: shown.cutList.map(({ height }) => height.replace("-", "−")),
    });
    return { ...shown, drawing };
  }

  private cutList({ stackCuts, slabs }: BoltSteps): z.output<typeof CutSchema>[] {
    return stackCuts.map(({ lo, hi }, i) => {
      const before = stackCuts[i - 1];
      const found = slabs.findIndex((slab) => slab.y0 === hi && slab.y1 === before?.lo);
      return {
        order: i + 1,
        height: this.small(lo),
        drop: before ? this.small(before.lo - lo) : null,
        slab: found < 0 ? null : found + 1,
      };
    });
  }

  private slab(slab: SlabSteps, marks: readonly StripMarks[]): z.output<typeof SlabSchema> {
    const { y0, y1, onMill, rips, strips } = slab;
    const lengths = strips.map(({ x0, x1, pieces }) => (x1 - x0) * pieces.reduce((sum, { length }) => sum + length, 0));
    this.sawn += (y1 - y0) * lengths.reduce((sum, length) => sum + length, 0);
    return {
      thickness: this.small(y1 - y0),
      from: this.small(y0),
      to: this.small(y1),
      onMill,
      rips: rips.length,
      strips: alike(strips).map((equal) => this.strips(equal, strips, marks)),
      tally: this.volume(this.sawn),
    };
  }

  private strips(equal: readonly StripSteps[], all: readonly StripSteps[], marks: readonly StripMarks[]) {
    const { x0, x1, pieces } = equal[0] as StripSteps;
    return {
      width: this.small(x1 - x0),
      times: equal.length,
      edges: equal.map((strip) => this.small(strip.x0)),
      pieces: inRuns(pieces.map(({ group, length }) => ({ group, length: this.long(length) }))),
      marks: equal.map((strip) => [...(marks[all.indexOf(strip)] as StripMarks)]),
    };
  }

  private marksOf({ pieces }: StripSteps): StripMarks {
    return pieces.map(({ group }) => this.writing.marks.next(group));
  }

  private long(steps: number): string {
    return remembered(this.longs, steps, () => {
      return marked({ value: this.grid.times(steps), unit: unit("mm") }, this.writing.system);
    });
  }

  private small(steps: number): string {
    return remembered(this.smalls, steps, () => this.mm(this.grid.times(steps)));
  }

  private mm(value: Decimal): string {
    return markedSmall({ value, unit: unit("mm") }, this.writing.system);
  }

  private area(squares: number) {
    const { area } = displayUnits(this.writing.system);
    return measured(this.grid.pow(2).times(squares), "mm2", area);
  }

  private volume(cubes: number) {
    const { lumber } = displayUnits(this.writing.system);
    return measured(this.grid.pow(3).times(cubes), "mm3", lumber);
  }
}

function remembered(known: Map<number, string>, steps: number, write: () => string): string {
  const text = known.get(steps) ?? write();
  known.set(steps, text);
  return text;
}

type StripMarks = readonly (string | null)[];

function measured(value: Decimal, of: string, display: string) {
  const found = inUnit({ value, unit: unit(of) }, unit(display));
  return { value: trimmed(found, placesFor(unit(display))), unit: display };
}

/** Equal neighbours together. */
function alike(strips: readonly StripSteps[]): StripSteps[][] {
  const key = ({ x0, x1, pieces }: StripSteps) => JSON.stringify([x1 - x0, pieces]);
  const found: StripSteps[][] = [];
  for (const strip of strips) {
    const last = found.at(-1);
    if (last?.[0] && key(last[0]) === key(strip)) last.push(strip);
    else found.push([strip]);
  }
  return found;
}

/** The end view in words. */
function describe(bolt: z.output<typeof BoltSchema>, rot: string | undefined): string {
  const slabs = bolt.slabs.map(({ thickness, strips }, i) => {
    const words = strips.map(({ width, marks }) => `${marks.map(markRuns).join(", ")} ${width} wide`);
    return `Slab ${i + 1}, ${thickness} thick: ${words.join("; ")}.`;
  });
  return [
    `${bolt.smallDiameter} of wood at the small end, ${bolt.sweep} of sweep, ${rot ? `rot ${rot} across` : "no rot"}.`,
    `${bolt.cuts} cuts, heights from the sawing axis, the first at ${bolt.opening}.`,
    ...slabs,
  ].join(" ");
}
