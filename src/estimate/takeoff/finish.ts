/**
 * Finish: faces that show, to coats, to volume. Hidden wide faces and the wood inside joints take none; rough-sawn wood
 * drinks more than smooth, a later coat goes further than the first.
 */

import { FINISHES, type Finish, type FinishKind, SECOND_COAT, type Texture } from "../../catalog/finishes.js";
import type { FinishOffer } from "../../catalog/offers/finish.js";
import type { Need } from "../need.js";
import type { PieceGroup } from "../pieces/piece-group.js";
import type { DisplayUnits } from "../quantity/display.js";
import { capital } from "../quantity/words.js";
import { type Assumed, citation } from "../request/assumed.js";
import {
  type Cell,
  count,
  greatest,
  least,
  minus,
  number,
  type Operand,
  over,
  plus,
  sumOr,
  times,
} from "../sheet/expression.js";
import { plain, type Sheet } from "../sheet/sheet.js";

/** The finish that is wished, and what is sold of it. */
export interface FinishTerms {
  readonly kind: FinishKind | "none";
  /** Offer whose coverage is taken, where its maker gives one. */
  readonly offer?: FinishOffer | undefined;
  readonly primerOffer?: FinishOffer | undefined;
  readonly assumed: Assumed;
}

/** Faces of one group's pieces that come alike. */
export interface FinishLine {
  readonly group: string;
  readonly texture: Texture;
  readonly area: Cell;
}

/** The finish that is wished, and the faces that show, in the textures that are asked for. */
export interface FacesToFinish {
  readonly terms: FinishTerms;
  readonly lines: readonly FinishLine[];
}

/** Faces and finish. */
export interface FinishTakeoff {
  readonly kind: FinishKind | "none";
  readonly needs: readonly Need[];
  readonly lines: readonly FinishLine[];
  /** Faces that show. */
  readonly area: Readonly<Record<Texture, Cell>>;
  /** Faces times coats, primer included: what is brushed. */
  readonly brushed: Readonly<Record<Texture, Cell>>;
  /** Waste included; absent when there is no finish. */
  readonly volume: Cell | undefined;
  readonly upkeep: FinishUpkeep | undefined;
  /** From one coat to the next; absent when there is no finish. */
  readonly betweenCoats: Cell | undefined;
}

/** Spread evenly over the years from one re-coating to the next. */
export interface FinishUpkeep {
  readonly recoatYears: Cell;
  readonly yearlyVolume: Cell;
  readonly yearlyArea: Cell;
}

const TEXTURES = ["rough", "smooth"] as const satisfies readonly Texture[];

/** Lays the faces of each group that show, in the texture that is asked for. */
export function layFaces(
  sheet: Sheet,
  groups: readonly PieceGroup[],
  assumed: Assumed,
  units: DisplayUnits,
): FinishLine[] {
  return groups.map((group) => layShown(sheet, group, assumed, units));
}

/**
 * Lays what finish some faces take.
 * @param under - What the names of its cells begin with: nothing, or a route's key and a dot. What holds of every finish of
 *   the kind (coats, coverage) is laid once, under no route.
 */
export function layFinish(
  sheet: Sheet,
  terms: FinishTerms,
  lines: readonly FinishLine[],
  units: DisplayUnits,
  under = "",
): FinishTakeoff {
  const { kind, assumed } = terms;
  const block = `${under}finish`;
  sheet.title(block, kind === "none" ? "Finish: none" : `Finish: ${FINISHES[kind].name}`);
  const lay = (name: string, label: string, display: string, formula: Operand) =>
    sheet.lay(`${block}.${name}`, formula, { label, display });
  const area = byTexture((texture) => lay(`${texture}Area`, `${texture} faces`, units.area, columnOf(lines, texture)));
  if (kind === "none") {
    const brushed = byTexture((texture) =>
      lay(`${texture}Brushed`, `${texture} faces brushed`, units.area, number("0 m2")),
    );
    return { kind, needs: [], lines, area, brushed, volume: undefined, upkeep: undefined, betweenCoats: undefined };
  }
  const finish: Finish = FINISHES[kind];
  const brushed = byTexture((texture) =>
    lay(
      `${texture}Brushed`,
      `${texture} faces times coats`,
      units.area,
      brushedOn(sheet, finish, texture, area[texture]),
    ),
  );
  const parts = TEXTURES.flatMap((texture) => {
    const { first, later } = coatsOn(sheet, terms, texture, area[texture]);
    return [
      lay(`${texture}First`, `first coat on ${texture} faces`, units.liquid, first),
      lay(`${texture}Later`, `later coats on ${texture} faces`, units.liquid, later),
    ];
  });
  const volume = lay("volume", "finish, waste included", units.liquid, withWaste(sumOr(parts, "L"), assumed));
  const primer = finish.primed ? [primerNeed(sheet, terms, area, { under, units })] : [];
  const need: Need = {
    name: "finish.finish",
    label: capital(finish.name),
    item: { kind: "finish", finish: kind },
    quantity: volume,
  };
  const upkeep = layUpkeep(sheet, { block, finish, volume, area, assumed }, units);
  const betweenCoats = assumed.spread(
    "finish.betweenCoats",
    "from one coat to the next",
    finish.betweenCoats,
    finish.from,
  );
  return { kind, needs: [...primer, need], lines, area, brushed, volume, upkeep, betweenCoats };
}

/** What some faces of one texture take. */
export interface FacesTake {
  /** Finish, and primer where it wants one; waste included. */
  readonly volumes: readonly { readonly kind: FinishKind; readonly volume: Operand }[];
  /** The faces times their coats. */
  readonly brushed: Operand;
}

/** What some faces of one texture take; undefined without a finish. */
export function takenBy(sheet: Sheet, terms: FinishTerms, texture: Texture, area: Operand): FacesTake | undefined {
  const { kind, assumed } = terms;
  if (kind === "none") return undefined;
  const finish: Finish = FINISHES[kind];
  const { first, later } = coatsOn(sheet, terms, texture, area);
  const primer = finish.primed
    ? [{ kind: "primer" as const, volume: withWaste(primerOn(sheet, terms, texture, area), assumed) }]
    : [];
  return {
    volumes: [{ kind, volume: withWaste(plus(first, later), assumed) }, ...primer],
    brushed: brushedOn(sheet, finish, texture, area),
  };
}

/** Four long faces and two ends, less the wide faces that lie hidden, what laps, battens, boards or sheets cover, and what joints do. */
function layShown(sheet: Sheet, group: PieceGroup, assumed: Assumed, units: DisplayUnits): FinishLine {
  const { name, label, totalLength, width, surface, rules, covered, contacts = [] } = group;
  sheet.title(`finish.${name}`, label);
  const hidden = { none: 0, "one-wide": 1, "both-wide": 2 }[rules.hiddenFaces];
  const faces = times(count(hidden), totalLength, width);
  const laps = covered ? [times(totalLength, covered)] : [];
  // Whoever wants all faces coated wants those in the laps, too.
  const off = [...(hidden === 0 ? [] : [faces, ...laps]), ...contacts];
  const open = off.length === 0 ? surface : minus(surface, ...off);
  const shown = minus(number("1"), assumed.cell("finish.jointShare"));
  const area = sheet.lay(`finish.${name}.area`, times(open, shown), { label: "faces that show", display: units.area });
  return { group: name, texture: textureOf(group), area };
}

/** How its faces are left. */
export const textureOf = ({ rules }: PieceGroup): Texture => (rules.surface === "rough" ? "rough" : "smooth");

const byTexture = <T>(lay: (texture: Texture) => T): Readonly<Record<Texture, T>> => ({
  rough: lay("rough"),
  smooth: lay("smooth"),
});

const columnOf = (lines: readonly FinishLine[], texture: Texture) =>
  sumOr(
    lines.filter((line) => line.texture === texture).map((line) => line.area),
    "m2",
  );

function layCoats(sheet: Sheet, finish: Finish, texture: Texture): Cell {
  const name = `finish.${texture}Coats`;
  const notes = { label: `coats on ${texture} faces`, source: citation(finish.from) };
  return sheet.find(name) ?? sheet.input(name, plain(finish.coats[texture]), notes);
}

function brushedOn(sheet: Sheet, finish: Finish, texture: Texture, area: Operand): Operand {
  const coats = layCoats(sheet, finish, texture);
  return times(area, finish.primed ? plus(coats, number("1")) : coats);
}

/** The first coat at the coverage, later ones at the coverage times how much further they go; waste not yet on top. */
function coatsOn(
  sheet: Sheet,
  { kind, offer, assumed }: FinishTerms,
  texture: Texture,
  area: Operand,
): { readonly first: Operand; readonly later: Operand } {
  const finish: Finish = FINISHES[kind as FinishKind];
  const further = assumed.spread("finish.secondCoat", "times as far as the first coat, a later one", SECOND_COAT, {
    source: "common-practice",
  });
  const coats = layCoats(sheet, finish, texture);
  const coverage = layCoverage(sheet, "finish", texture, finish, offer, assumed);
  const one = number("1");
  return {
    first: over(times(area, least(coats, one)), coverage),
    later: over(times(area, greatest(minus(coats, one), number("0"))), times(coverage, further)),
  };
}

const withWaste = (volume: Operand, assumed: Assumed) => times(volume, plus(number("1"), assumed.cell("finish.waste")));

/** The maker's coverage where the offer gives it, else the published range. */
function layCoverage(
  sheet: Sheet,
  block: string,
  texture: Texture,
  finish: Finish,
  offer: FinishOffer | undefined,
  assumed: Assumed,
): Cell {
  const name = `${block}.${texture}Coverage`;
  const label = `first-coat coverage on ${texture} faces`;
  const given = offer?.coverage[texture];
  const known = sheet.find(name);
  if (known) return known;
  if (given) return sheet.catalog(name, given, { label, source: offer.label });
  return assumed.spread(name, label, finish.coverage[texture], finish.from);
}

/** One coat below paint and solid stain. */
function primerNeed(
  sheet: Sheet,
  terms: FinishTerms,
  area: Readonly<Record<Texture, Cell>>,
  { under, units }: { readonly under: string; readonly units: DisplayUnits },
): Need {
  const primer: Finish = FINISHES.primer;
  const block = `${under}finish.primer`;
  sheet.title(block, capital(primer.name));
  const coat = (texture: Texture) => primerOn(sheet, terms, texture, area[texture]);
  const quantity = sheet.lay(`${block}.volume`, withWaste(plus(coat("rough"), coat("smooth")), terms.assumed), {
    label: "primer, waste included",
    display: units.liquid,
  });
  return { name: "finish.primer", label: capital(primer.name), item: { kind: "finish", finish: "primer" }, quantity };
}

const primerOn = (sheet: Sheet, { primerOffer, assumed }: FinishTerms, texture: Texture, area: Operand): Operand =>
  over(area, layCoverage(sheet, "finish.primer", texture, FINISHES.primer, primerOffer, assumed));

/** Sealer brushed on two ends a piece, whatever their texture. */
export function endSealer(sheet: Sheet, groups: readonly PieceGroup[], assumed: Assumed, units: DisplayUnits): Need {
  const ends = groups.map(({ count: pieces, thickness, width }) => times(number("2"), pieces, thickness, width));
  const area = sheet.lay("finish.endGrain", sumOr(ends, "m2"), { label: "end grain", display: units.area });
  const quantity = sheet.lay(
    "finish.endSealer.volume",
    withWaste(over(area, assumed.cell("finish.endSealerCoverage")), assumed),
    { label: "end sealer, waste included", display: units.liquid },
  );
  return { name: "finish.end-sealer", label: "End sealer", item: { kind: "consumable", item: "end-sealer" }, quantity };
}

interface UpkeepInput {
  readonly block: string;
  readonly finish: Finish;
  readonly volume: Cell;
  readonly area: Readonly<Record<Texture, Cell>>;
  readonly assumed: Assumed;
}

/** A later coating is taken to be a whole one. */
function layUpkeep(
  sheet: Sheet,
  { block, finish: { years, from }, volume, area, assumed }: UpkeepInput,
  units: DisplayUnits,
): FinishUpkeep {
  const recoatYears = assumed.spread("finish.recoatYears", "from one coating to the next", years, from);
  const aYear = (whole: Operand) => over(times(whole, number("1 year")), recoatYears);
  return {
    recoatYears,
    yearlyVolume: sheet.lay(`${block}.yearlyVolume`, aYear(volume), {
      label: "finish for upkeep, a year",
      display: units.liquid,
    }),
    yearlyArea: sheet.lay(`${block}.yearlyArea`, aYear(plus(area.rough, area.smooth)), {
      label: "faces coated for upkeep, a year",
      display: units.area,
    }),
  };
}
