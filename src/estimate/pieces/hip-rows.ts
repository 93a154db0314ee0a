/** Purlins and fascia of a hip roof: rows round all four sides that end in mitres at the hips. */
import { type Cell, count, minus, number, type Operand, over, plus, times } from "../sheet/expression.js";
import { rowPlaces } from "./deck.js";
import { type HipFraming, widerPurlin } from "./hip-frame.js";
import { laid, wholes, yardFor } from "./laying.js";
import type { PieceGroup } from "./piece-group.js";
import { gatherPieces, layPlace, type Place, rowPieces } from "./rows.js";

/** Lays the groups of all rows, equal pieces of a side together. */
export function hipRows(framing: HipFraming): PieceGroup[] {
  const sides = eaveSide(framing, "side", framing.frame.length, sideRafters(framing));
  const ends = eaveSide(framing, "end", framing.frame.span, endRafters(framing));
  return [
    ...(framing.deck.kind === "purlins" ? [...purlins(framing, sides, 2), ...purlins(framing, ends, 2)] : []),
    ...fascia(framing, sides),
    ...fascia(framing, ends),
  ];
}

/** One of the two sides that are twice there, in places from the corner of its eave. */
interface EaveSide {
  readonly name: "side" | "end";
  /** Tail corner to tail corner. */
  readonly eave: Place;
  readonly rafters: readonly Place[];
}

function eaveSide({ laying, frame }: HipFraming, name: EaveSide["name"], plate: Cell, rafters: Place[]): EaveSide {
  const whole = plus(plate, times(number("2"), frame.eaveOverhang));
  const label = `${name} eave, corner to corner`;
  return { name, eave: layPlace(laying.sheet, `rows.${name}`, label, whole, laying.units.long), rafters };
}

/** Of jacks up to the ridge's end, commons along it, jacks down again. */
function sideRafters(framing: HipFraming): Place[] {
  const { layout } = framing;
  const spaces = wholes(framing.laying.sheet, layout.commonSpaces);
  const first = plus(framing.frame.eaveOverhang, layout.run);
  const commons = Array.from({ length: spaces + 1 }, (_, i) => plus(first, times(count(i), layout.commonSpace)));
  return placed(framing, "side", [
    ...jacksBefore(framing, first),
    ...commons,
    ...jacksAfter(framing, plus(first, layout.ridgeLine)),
  ]);
}

/** Of jacks up to the end common, and down again. */
function endRafters(framing: HipFraming): Place[] {
  const middle = plus(framing.frame.eaveOverhang, framing.layout.run);
  return placed(framing, "end", [...jacksBefore(framing, middle), middle, ...jacksAfter(framing, middle)]);
}

const steps = ({ laying, layout }: HipFraming) => Math.max(0, wholes(laying.sheet, layout.jackSpaces) - 1);

function jacksBefore(framing: HipFraming, from: Operand): Operand[] {
  const n = steps(framing);
  return Array.from({ length: n }, (_, i) => minus(from, times(count(n - i), framing.layout.jackSpace)));
}

function jacksAfter(framing: HipFraming, from: Operand): Operand[] {
  return Array.from({ length: steps(framing) }, (_, i) => plus(from, times(count(i + 1), framing.layout.jackSpace)));
}

function placed({ laying }: HipFraming, side: string, centres: readonly Operand[]): Place[] {
  return centres.map((at, i) =>
    layPlace(
      laying.sheet,
      `rows.${side}.rafter${i + 1}`,
      `${side} rafter ${i + 1}, from the corner`,
      at,
      laying.units.long,
    ),
  );
}

/** Row after row, each as long as the slope is at its lower edge. */
function purlins(framing: HipFraming, side: EaveSide, runs: number): PieceGroup[] {
  const { laying, frame, layout, rafter, purlinRows } = framing;
  const { sheet, units, sections } = laying;
  const width = widerPurlin(sheet, sections);
  const reach = minus(rafter.edgeLength, width);
  const rows = rowPlaces(wholes(sheet, purlinRows), framing.deck.closerRows);
  const longest = sheet.decide(frame.longestPiece);
  const cut = rows.map(({ half, halves }, i) => {
    const up = half === 0 ? number("0 in") : over(times(count(half), reach), count(halves));
    const name = `rows.${side.name}.purlin${i + 1}`;
    const level = over(times(up, frame.unitRun), rafter.unitLength);
    const from = layPlace(sheet, name, `row ${i + 1} begins, level from the corner`, level, units.long);
    const end = minus(side.eave.at, from.at);
    const to = layPlace(sheet, `${name}.end`, `row ${i + 1} ends, level from the corner`, end, units.long);
    return { from, to };
  });
  // Near the peak a row would lie on the hips alone and hold no sheet between them.
  const shortest = sheet.decide(layout.jackSpace);
  const base = `${side.name}-purlins` as const;
  const yard = yardFor(laying, base, "Purlins");
  const useful = cut.filter(({ from, to }) => to.value.minus(from.value).gt(shortest));
  const gathered = gatherPieces(
    useful.map(({ from, to }) => ({
      ends: rowPieces(from, to, side.rafters, { longest, yard }),
      count: runs,
      supports: side.rafters,
    })),
  );
  return gathered.flatMap((pieces, i) =>
    laid(laying, base, {
      name: gathered.length === 1 ? base : `${base}-${i + 1}`,
      label: gathered.length === 1 ? `Purlins (${side.name} slopes)` : `Purlins ${i + 1} (${side.name} slopes)`,
      length: pieces.length,
      count: count(pieces.count),
      supportsApart: layout.jackSpace,
      crossings: pieces.crossings,
      spliced: true,
      meetsOver: sections.rafters.thickness,
    }),
  );
}

/** Mitred round the corners, so longer than the eave by its own thickness at either end. */
function fascia({ laying, frame }: HipFraming, side: EaveSide): PieceGroup[] {
  const { sheet, units, sections } = laying;
  const base = `${side.name}-fascia` as const;
  const past = sections[base].thickness;
  const place = (name: string, label: string, at: Operand) =>
    layPlace(sheet, `rows.${side.name}.fascia.${name}`, label, at, units.long);
  const from = place("from", "fascia begins, level from the corner", times(number("-1"), past));
  const to = place("to", "fascia ends, level from the corner", plus(side.eave.at, past));
  const longest = sheet.decide(frame.longestPiece);
  const whole = side.name === "end" ? "End fascia" : "Side fascia";
  const yard = yardFor(laying, base, whole);
  const gathered = gatherPieces([{ ends: rowPieces(from, to, side.rafters, { longest, yard }), count: 2 }]);
  return gathered.flatMap((pieces, i) =>
    laid(laying, base, {
      name: gathered.length === 1 ? base : `${base}-${i + 1}`,
      label: gathered.length === 1 ? whole : `${whole} ${i + 1}`,
      length: pieces.length,
      count: count(pieces.count),
      // Two eaves are alike: more than a piece each meet over a rafter's tail.
      ...((gathered.length > 1 || pieces.count > 2) && {
        spliced: true,
        begins: pieces.begins,
        meetsOver: sections.rafters.thickness,
      }),
    }),
  );
}
