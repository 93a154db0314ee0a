/**
 * A log as it lies, to the sound wood in it: bark, flare and bad ends off, the rest as straight tapered wood with the
 * sweep and rot that remain.
 *
 * Diameter inside bark from that over bark: the bark is a share b of the wood's volume, so d² (1 + b) = D² and
 * d = D ÷ √(1 + b). Source of b: US forest inventory, species table.
 */
import { type QuantityText, toQuantity } from "../../catalog/reading.js";
import { type Fault, pointer } from "../faults.js";
import type { DisplayUnits } from "../quantity/display.js";
import { exactly } from "../quantity/text.js";
import type { Defaults } from "../request/given.js";
import { LONGEST_LOG, type LogShape } from "../request/logs.js";
import { type Cell, minus, number, type Operand, over, PI, plus, square, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import { type LogScaleCells, layLogScale } from "./log-rules.js";
import type { WoodCells } from "./wood.js";

/** The sound wood of one log: all cells are lengths unless named otherwise. */
export interface SoundLog {
  readonly name: string;
  readonly species: string;
  readonly dirty: boolean;
  readonly length: Cell;
  readonly smallDiameter: Cell;
  readonly largeDiameter: Cell;
  readonly sweep: Cell;
  readonly rotSmall: Cell;
  readonly rotLarge: Cell;
  /** One side, at the large end. */
  readonly bark: Cell;
  readonly scale: LogScaleCells;
  /** Green, bark not counted. */
  readonly weight: Cell;
  /** From where it lies to the mill; absent where nothing was said. */
  readonly distance: Cell | undefined;
  readonly value: Cell | undefined;
}

/** Assumptions that stand in for what was not measured. */
export interface LogAssumptions {
  /** Growth of the diameter along the log, small end to large. */
  readonly taper: Cell;
  readonly someSweep: Cell;
  readonly badSweep: Cell;
}

/** What laying one log needs beside the log. */
export interface LogLaying {
  readonly sheet: Sheet;
  readonly wood: WoodCells;
  readonly assumed: LogAssumptions;
  readonly defaults: Defaults;
  readonly units: DisplayUnits;
  readonly currency: string;
}

const nothing = ({ small }: DisplayUnits): Operand => number(`0 ${small}`);

/**
 * Lays a log's measured sizes and the sound wood that follows from them.
 * @param at - JSON Pointer of the log in the request.
 * @returns the log, or what makes it no log.
 */
export function laySoundLog(laying: LogLaying, log: LogShape, name: string, at: string): SoundLog | readonly Fault[] {
  const { sheet, wood, units } = laying;
  const { small, long } = units;
  const line = `logs.${name}`;
  sheet.title(line, name);
  const lay = (column: string, label: string, formula: Operand, display: string) =>
    sheet.lay(`${line}.${column}`, formula, { label, display });
  const taken = (column: string, label: string, text: QuantityText | undefined, display = small): Operand =>
    text === undefined ? nothing(units) : sheet.input(`${line}.${column}`, toQuantity(text, "mm"), { label, display });

  const whole = sheet.input(`${line}.whole`, toQuantity(log.length, "mm"), {
    label: "length as it lies",
    display: long,
  });
  const badSmall = taken("badSmall", "bad small end", log.badEnds?.smallEnd);
  const badLarge = taken("badLarge", "bad large end", log.badEnds?.largeEnd);
  const tapered = lay("tapered", "length above the flare", minus(whole, taken("flare", "flare", log.flare)), long);
  const length = lay("length", "sound length", minus(minus(tapered, badSmall), badLarge), long);
  if (sheet.decide(length).lte(0)) return tooShort(sheet, name, length, at);
  if (sheet.decide(length).gt(exactly(LONGEST_LOG).value)) return tooLong(sheet, name, length, at);

  const ends = layEnds(laying, log, line, tapered, at);
  const growth = minus(ends.large, ends.small);
  const smallDiameter = lay(
    "soundSmall",
    "sound wood, small end",
    plus(ends.small, over(times(growth, badSmall), tapered)),
    small,
  );
  const largeDiameter = lay(
    "soundLarge",
    "sound wood, large end",
    minus(ends.large, over(times(growth, badLarge), tapered)),
    small,
  );
  if (sheet.decide(smallDiameter).lte(0) || sheet.decide(largeDiameter).lt(sheet.decide(smallDiameter))) {
    return endsAskew(sheet, { ...log, name }, [smallDiameter, largeDiameter], at);
  }
  // A parabola: a shorter length of the same bow has less sweep by the square of its share.
  const bow = over(times(sweepOf(laying, log, line, at), square(length)), square(whole));
  const rot = rotAt(taken, log, { badSmall, badLarge, whole });
  const scale = layLogScale(sheet, line, { smallDiameter, largeDiameter, length }, units);
  return {
    name,
    species: log.species,
    dirty: log.dirty ?? false,
    length,
    smallDiameter,
    largeDiameter,
    sweep: lay("sweep", "sweep over the sound length", bow, small),
    rotSmall: lay("rotSmall", "rot at the sound small end", rot.small, small),
    rotLarge: lay("rotLarge", "rot at the sound large end", rot.large, small),
    bark: lay("bark", "bark, one side", barkThickness(largeDiameter, wood), small),
    scale,
    weight: lay("weight", "weight, green", times(scale.smalian, wood.greenDensity), units.mass),
    ...layGiven(laying, log, line),
  };
}

/** Rot where the bad ends are cut off: it grows evenly from one end of the log to the other. */
function rotAt(
  taken: (column: string, label: string, text: QuantityText | undefined) => Operand,
  { rot }: LogShape,
  { badSmall, badLarge, whole }: Readonly<Record<"badSmall" | "badLarge" | "whole", Operand>>,
) {
  const small = taken("rotSmallEnd", "rotten heart, small end", rot?.smallEnd);
  const large = taken("rotLargeEnd", "rotten heart, large end", rot?.largeEnd);
  const growth = minus(large, small);
  return {
    small: plus(small, over(times(growth, badSmall), whole)),
    large: minus(large, over(times(growth, badLarge), whole)),
  };
}

/** What only the user knows of a log. */
function layGiven({ sheet, units, currency }: LogLaying, { distance, value }: LogShape, line: string) {
  const input = (
    column: string,
    text: QuantityText | undefined,
    unit: string,
    look: { label: string; display?: string },
  ) => (text === undefined ? undefined : sheet.input(`${line}.${column}`, toQuantity(text, unit), look));
  return {
    distance: input("distance", distance, "ft", { label: "distance to the mill", display: units.long }),
    value: input("value", value, currency, { label: "value if sold" }),
  };
}

/** Diameters inside bark at the small end and above the flare. */
function layEnds(
  laying: LogLaying,
  log: LogShape,
  line: string,
  tapered: Cell,
  at: string,
): { small: Cell; large: Cell } {
  const { sheet, wood, assumed, defaults, units } = laying;
  const display = units.small;
  const inside = (outer: Operand) => (log.bark === "inside" ? outer : over(outer, wood.overBark));
  const across = (end: "small" | "large"): Operand | undefined => {
    const diameter = end === "small" ? log.smallDiameter : log.largeDiameter;
    const girth = end === "small" ? log.smallGirth : log.largeGirth;
    const input = (column: string, label: string, text: QuantityText) =>
      sheet.input(`${line}.${end}${column}`, toQuantity(text, "mm"), { label: `${label}, ${end} end`, display });
    if (diameter !== undefined) return input("Diameter", "diameter as measured", diameter);
    return girth === undefined ? undefined : over(input("Girth", "girth as measured", girth), PI);
  };
  const smallMeasured = across("small");
  if (!smallMeasured) throw new Error("a log without a small end passed the door");
  const small = sheet.lay(`${line}.smallInside`, inside(smallMeasured), { label: "small end inside bark", display });
  const largeMeasured = across("large");
  if (!largeMeasured)
    defaults.taken.push({ at: `${at}/largeDiameter`, value: "by taper", why: "the large end was not measured" });
  const large = sheet.lay(
    `${line}.largeInside`,
    largeMeasured ? inside(largeMeasured) : plus(small, times(assumed.taper, tapered)),
    { label: "large end inside bark", display },
  );
  return { small, large };
}

function sweepOf({ sheet, assumed, defaults, units }: LogLaying, log: LogShape, line: string, at: string): Operand {
  const said = log.sweep;
  if (said === undefined)
    defaults.taken.push({ at: `${at}/sweep`, value: "some", why: "nobody said how crooked it is" });
  if (said === undefined || said === "some") return assumed.someSweep;
  if (said === "straight") return nothing(units);
  if (said === "bad") return assumed.badSweep;
  return sheet.input(`${line}.sweepMeasured`, toQuantity(said, "mm"), {
    label: "sweep as measured",
    display: units.small,
  });
}

/** From the diameter inside bark back over it, half of the difference. */
function barkThickness(inside: Operand, wood: WoodCells): Operand {
  return over(times(inside, minus(wood.overBark, number("1"))), number("2"));
}

function tooLong(sheet: Sheet, name: string, length: Cell, at: string): Fault[] {
  const wrong = `${name} has a sound length of ${sheet.onTape(length)}.`;
  return [{ code: "out-of-range", at: sheet.blame(length) || at, wrong, cure: `Give at most ${LONGEST_LOG}.` }];
}

function tooShort(sheet: Sheet, name: string, length: Cell, at: string): Fault[] {
  const wrong = `Nothing sound is left of ${name}: its sound length is ${sheet.onTape(length)}.`;
  return [
    {
      code: "cannot-build",
      at: sheet.blame(length) || at,
      wrong,
      cure: "Bad ends and flare must be shorter than the log.",
    },
  ];
}

/** @param ends - Sound wood inside bark, at the small and at the large end. */
function endsAskew(sheet: Sheet, log: LogShape, [small, large]: readonly [Cell, Cell], at: string): Fault[] {
  const taken = log.bark === "inside" ? "" : ", bark taken off";
  const wrong = `${log.name} has a small end of ${sheet.onTape(small)} and a large end of ${sheet.onTape(large)}${taken}.`;
  return [
    {
      code: "cannot-build",
      at: pointer(at, "largeDiameter"),
      wrong,
      cure: `The large end must be at least as thick as the small end.${taken && ' Where they were taken inside the bark, say "bark": "inside".'}`,
    },
  ];
}
