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

/** Pieces, and the finish that is wished. */
export interface FinishInput {
  readonly groups: readonly PieceGroup[];
  readonly kind: FinishKind | "none";
  /** Offer whose coverage is taken, where its maker gives one. */
  readonly offer?: FinishOffer | undefined;
  readonly primerOffer?: FinishOffer | undefined;
  /** Brush sealer on all end grain as well. */
  readonly sealEnds: boolean;
  readonly assumed: Assumed;
}

/** One group's faces. */
export interface FinishLine {
  readonly group: string;
  readonly texture: Texture;
  /** Of all its pieces. */
  readonly area: Cell;
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

/** Lays the faces of each group, and what finish they take. */
export function layFinish(sheet: Sheet, input: FinishInput, units: DisplayUnits): FinishTakeoff {
  const { kind, assumed } = input;
  sheet.title("finish", kind === "none" ? "Finish: none" : `Finish: ${FINISHES[kind].name}`);
  const lines = input.groups.map((group) => layFaces(sheet, group, assumed, units));
  const area = byTexture((texture) =>
    sheet.lay(`finish.${texture}Area`, columnOf(lines, texture), { label: `${texture} faces`, display: units.area }),
  );
  const sealer = input.sealEnds ? [endSealer(sheet, input, units)] : [];
  if (kind === "none") {
    const brushed = byTexture((texture) =>
      sheet.lay(`finish.${texture}Brushed`, number("0 m2"), { label: `${texture} faces brushed`, display: units.area }),
    );
    return { kind, needs: sealer, lines, area, brushed, volume: undefined, upkeep: undefined, betweenCoats: undefined };
  }
  const finish: Finish = FINISHES[kind];
  const coats = byTexture((texture) =>
    sheet.input(`finish.${texture}Coats`, plain(finish.coats[texture]), {
      label: `coats on ${texture} faces`,
      source: citation(finish.from),
    }),
  );
  const brushed = byTexture((texture) => {
    const all = finish.primed ? plus(coats[texture], number("1")) : coats[texture];
    return sheet.lay(`finish.${texture}Brushed`, times(area[texture], all), {
      label: `${texture} faces times coats`,
      display: units.area,
    });
  });
  const volume = layVolume(sheet, { ...input, finish, coats, area }, units);
  const primer = finish.primed ? [primerNeed(sheet, input, area, units)] : [];
  const need: Need = {
    name: "finish.finish",
    label: capital(finish.name),
    item: { kind: "finish", finish: kind },
    quantity: volume,
  };
  const upkeep = layUpkeep(sheet, assumed, finish, volume, area, units);
  const betweenCoats = assumed.spread(
    "finish.betweenCoats",
    "from one coat to the next",
    finish.betweenCoats,
    finish.from,
  );
  return { kind, needs: [...primer, need, ...sealer], lines, area, brushed, volume, upkeep, betweenCoats };
}

/** Four long faces and two ends, less the wide faces that lie hidden, what laps, battens, boards or sheets cover, and what joints do. */
function layFaces(sheet: Sheet, group: PieceGroup, assumed: Assumed, units: DisplayUnits): FinishLine {
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

interface VolumeInput extends FinishInput {
  readonly finish: Finish;
  readonly coats: Readonly<Record<Texture, Cell>>;
  readonly area: Readonly<Record<Texture, Cell>>;
}

/** First coats at the coverage, later ones at the coverage times how much further they go; waste on top. */
function layVolume(sheet: Sheet, input: VolumeInput, units: DisplayUnits): Cell {
  const { finish, offer, coats, area, assumed } = input;
  const further = assumed.spread("finish.secondCoat", "times as far as the first coat, a later one", SECOND_COAT, {
    source: "common-practice",
  });
  const volumes = TEXTURES.flatMap((texture) => {
    const coverage = layCoverage(sheet, "finish", texture, finish, offer, assumed);
    const one = number("1");
    const first = over(times(area[texture], least(coats[texture], one)), coverage);
    const later = over(
      times(area[texture], greatest(minus(coats[texture], one), number("0"))),
      times(coverage, further),
    );
    const lay = (name: string, label: string, operand: Operand) =>
      sheet.lay(`finish.${texture}${name}`, operand, { label, display: units.liquid });
    return [
      lay("First", `first coat on ${texture} faces`, first),
      lay("Later", `later coats on ${texture} faces`, later),
    ];
  });
  return sheet.lay("finish.volume", withWaste(sumOr(volumes, "L"), assumed), {
    label: "finish, waste included",
    display: units.liquid,
  });
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
  if (given) return sheet.catalog(name, given, { label, source: offer.label });
  return assumed.spread(name, label, finish.coverage[texture], finish.from);
}

/** One coat below paint and solid stain. */
function primerNeed(
  sheet: Sheet,
  { primerOffer, assumed }: FinishInput,
  area: Readonly<Record<Texture, Cell>>,
  units: DisplayUnits,
): Need {
  const primer: Finish = FINISHES.primer;
  sheet.title("finish.primer", capital(primer.name));
  const coat = (texture: Texture) =>
    over(area[texture], layCoverage(sheet, "finish.primer", texture, primer, primerOffer, assumed));
  const quantity = sheet.lay("finish.primer.volume", withWaste(plus(coat("rough"), coat("smooth")), assumed), {
    label: "primer, waste included",
    display: units.liquid,
  });
  return { name: "finish.primer", label: capital(primer.name), item: { kind: "finish", finish: "primer" }, quantity };
}

/** Two ends a piece. */
function endSealer(sheet: Sheet, { groups, assumed }: FinishInput, units: DisplayUnits): Need {
  const ends = groups.map(({ count: pieces, thickness, width }) => times(number("2"), pieces, thickness, width));
  const area = sheet.lay("finish.endGrain", sumOr(ends, "m2"), { label: "end grain", display: units.area });
  const quantity = sheet.lay(
    "finish.endSealer.volume",
    withWaste(over(area, assumed.cell("finish.endSealerCoverage")), assumed),
    { label: "end sealer, waste included", display: units.liquid },
  );
  return { name: "finish.end-sealer", label: "End sealer", item: { kind: "consumable", item: "end-sealer" }, quantity };
}

/** A later coating is taken to be a whole one. */
function layUpkeep(
  sheet: Sheet,
  assumed: Assumed,
  { years, from }: Finish,
  volume: Cell,
  area: Readonly<Record<Texture, Cell>>,
  units: DisplayUnits,
): FinishUpkeep {
  const recoatYears = assumed.spread("finish.recoatYears", "from one coating to the next", years, from);
  const aYear = (whole: Operand) => over(times(whole, number("1 year")), recoatYears);
  return {
    recoatYears,
    yearlyVolume: sheet.lay("finish.yearlyVolume", aYear(volume), {
      label: "finish for upkeep, a year",
      display: units.liquid,
    }),
    yearlyArea: sheet.lay("finish.yearlyArea", aYear(plus(area.rough, area.smooth)), {
      label: "faces coated for upkeep, a year",
      display: units.area,
    }),
  };
}
