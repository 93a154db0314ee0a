/**
 * One roof under several coverings, side by side: each a whole system with its deck as bought, priced and taxed, with hours,
 * weight, and cost for each year that it lasts. A covering that the code does not allow is shown and flagged, never dropped.
 */
import { type CoveringKind, coveringKinds, coveringName } from "../catalog/coverings.js";
import { boardsOf, coveringOffers } from "../catalog/look-up.js";
import { type Basis, soldFor } from "./basis.js";
import { deckSheetsTime, layingTime } from "./effort/roofing.js";
import { FaultError } from "./faults.js";
import type { Need } from "./need.js";
import { type Deck, deckFor, deckOf, riseOn12 } from "./pieces/deck.js";
import { layPurlinRows } from "./pieces/frame.js";
import type { SettingsByGroup, WantedGroup } from "./pieces/laying.js";
import { amountsOf, layTaxes, type ShoppingLine } from "./purchase/line.js";
import { layShoppingList } from "./purchase/shopping-list.js";
import { offerFor } from "./purchase/substitution.js";
import { parseSection, TextFault } from "./quantity/text.js";
import type { DeckKind } from "./request/structure-deck.js";
import { aside } from "./sheet/aside.js";
import { type Cell, number, over, plus, times } from "./sheet/expression.js";
import { type CoveredRoof, coveredRoof } from "./takeoff/covered-roof.js";
import { type CoveringTakeoff, layCovering } from "./takeoff/covering.js";
import {
  type ComparedDeck,
  type DeckCells,
  type DeckLumber,
  layComparedDeck,
  planComparedDeck,
  usualDeckSection,
} from "./takeoff/deck-takeoff.js";
import { deckExposure } from "./takeoffs.js";

/** One covering with its deck and what they come to. */
export interface ComparedCovering {
  readonly takeoff: CoveringTakeoff;
  readonly deck: DeckCells;
  /** The covering that the request builds. */
  readonly built: boolean;
  readonly lines: readonly ShoppingLine[];
  readonly taxes: readonly Cell[];
  /** Priced lines and their taxes; what has no price is not in it. Absent where nothing has. */
  readonly cash: Cell | undefined;
  /** Lines without a price. */
  readonly unpriced: number;
  /** Cash for each year of its life; absent where a line has no price, for the true cost is higher. */
  readonly yearly: Cell | undefined;
  /** Person-hours for deck, covering and trim. */
  readonly hours: Cell;
  /** Of deck, underlay and covering together. */
  readonly weight: Cell;
}

/**
 * Lays the coverings, best first: those that are allowed before those that are not, wholly priced ones before others, then by
 * cost for a year of life; those whose cost nobody knows by their hours.
 *
 * @param kinds - All that the service knows where nothing is said.
 * @param built - The covering that the estimate takes off already.
 * @throws FaultError where there is no closed roof to cover.
 */
export function compareCoverings(
  basis: Basis,
  kinds: readonly CoveringKind[] = coveringKinds,
  built?: CoveringTakeoff,
): ComparedCovering[] {
  const roof = built?.work.roof ?? coveredRoof(basis.sheet, basis.cutList, basis.units);
  if (!roof) {
    const wrong = "There is no closed roof to be covered.";
    throw new FaultError([
      {
        code: "cannot-build",
        at: "/structure/kind",
        wrong,
        cure: "Give a gable, lean-to or hip, or compare no coverings.",
      },
    ]);
  }
  basis.sheet.title("coverings", "Coverings compared");
  const all = new Set([...(built ? [built.kind] : []), ...kinds]);
  const compared = [...all].map((kind) => compareOne(basis, kind, roof, built?.kind === kind ? built : undefined));
  return compared.sort(better);
}

function better(a: ComparedCovering, b: ComparedCovering): number {
  const rank = ({ takeoff, unpriced }: ComparedCovering) => (takeoff.slope.allowed ? 0 : 2) + (unpriced > 0 ? 1 : 0);
  const byName = a.takeoff.kind < b.takeoff.kind ? -1 : 1;
  const yearly = a.yearly && b.yearly ? aside(a.yearly).cmp(aside(b.yearly)) : 0;
  return rank(a) - rank(b) || yearly || aside(a.hours).cmp(aside(b.hours)) || byName;
}

function compareOne(
  basis: Basis,
  kind: CoveringKind,
  roof: CoveredRoof,
  built: CoveringTakeoff | undefined,
): ComparedCovering {
  const { sheet } = basis;
  const name = `coverings.${kind}`;
  sheet.title(name, coveringName(kind, basis.request.system));
  const boards = planBoards(basis, kind, name, built ? roof.deck : deckUnder(basis, kind, roof));
  const takeoff = built ?? layOther(basis, kind, name, roofOn(basis, name, roof, boards));
  const deck = boards ? layComparedDeck(takeoff.work, boards) : (takeoff.deck as DeckCells);
  const own = takeoff.deck ? takeoff.needs : [...takeoff.needs, ...deck.needs];
  const needs = own.map((need): Need => ({ ...need, name: `${name}${need.name.slice(takeoff.name.length)}` }));
  const lines = layShoppingList(basis.pricing, basis.catalog, needs, basis.request.system).map(({ line }) => line);
  const taxes = layTaxes(basis.pricing, name, basis.catalog.taxes, lines);
  const unpriced = lines.filter(({ amount }) => !amount).length;
  const cash =
    unpriced === lines.length
      ? undefined
      : sheet.lay(`${name}.cash`, plus(amountsOf(basis.pricing, lines), ...taxes), {
          label: "deck and covering as bought, with taxes",
        });
  return {
    ...{ takeoff, deck, built: built !== undefined, lines, taxes, cash },
    unpriced,
    yearly:
      cash && unpriced === 0
        ? sheet.lay(`${name}.yearly`, over(times(cash, number("1 year")), takeoff.life), {
            label: "cost for a year of its life",
          })
        : undefined,
    hours: layHours(basis, name, takeoff, deck),
    weight: takeoff.deck
      ? takeoff.weight
      : sheet.lay(`${name}.allWeight`, plus(takeoff.weight, deck.weight), {
          label: "weight of deck, underlay and covering",
          display: basis.units.mass,
        }),
  };
}

function layOther(basis: Basis, kind: CoveringKind, name: string, roof: CoveredRoof): CoveringTakeoff {
  const { sheet, catalog, assumed, defaults, units } = basis;
  const found = coveringOffers(catalog, kind);
  const offer = found.kind === "offered" ? found.offers[0] : undefined;
  const lumber = boardsOf(catalog, offer);
  const exposure = deckExposure(basis);
  return layCovering(sheet, { kind, name, roof, offer, lumber, exposure, assumed, defaults }, units);
}

/** The deck that the frame would have below another covering: as the request has it where it serves, else the usual one. */
function deckUnder({ sheet, request, defaults }: Basis, covering: CoveringKind, roof: CoveredRoof): Deck {
  const rise = riseOn12(sheet, roof.unitRise, roof.unitRun);
  const asked = "deck" in request.structure ? request.structure.deck : undefined;
  return deckOf({ covering, deck: { ...asked, kind: deckFor(covering, rise, asked?.kind) } }, rise, defaults);
}

/** Boards or purlins with what the request says of their group, or what the covering's offer names; none below sheets. */
function planBoards(basis: Basis, kind: CoveringKind, name: string, deck: Deck): ComparedDeck | undefined {
  if (deck.kind === "sheets") return undefined;
  const { sheet, request, units } = basis;
  const groups = "groups" in request.structure ? (request.structure.groups as SettingsByGroup) : undefined;
  const settings = groupsOf(deck.kind).flatMap((group) => groups?.[group] ?? [])[0];
  const usual = parseSection(usualDeckSection(deck.kind)[request.system]);
  if (usual instanceof TextFault) throw new Error(usual.wrong);
  const lumberFor = (wanted: WantedGroup): DeckLumber => lumberForDeck(basis, kind, wanted);
  const planned = planComparedDeck(sheet, { name: `${name}.boards`, deck, settings, usual, lumberFor }, units.small);
  const tight = deck.spacing?.value.lte(sheet.decide(planned.section.width));
  // Boards that leave no gap at that spacing lie edge to edge.
  return tight ? { ...planned, deck: { kind: "solid-boards", spacing: undefined, closerRows: 0 } } : planned;
}

const groupsOf = (kind: DeckKind): readonly string[] =>
  kind === "purlins" ? ["purlins", "side-purlins"] : ["deck-boards"];

/** The lumber that the covering's offer names, where it is of the section wanted; else what the order would be of. */
function lumberForDeck(basis: Basis, kind: CoveringKind, wanted: WantedGroup): DeckLumber {
  const { sheet, catalog, request } = basis;
  const found = coveringOffers(catalog, kind);
  const named = found.kind === "offered" ? found.offers[0]?.deck : undefined;
  const [thickness, width] = [sheet.decide(wanted.thickness), sheet.decide(wanted.width)];
  const same = catalog.lumber.find(
    ({ name, section }) => name === named && section.thickness.value.eq(thickness) && section.width.value.eq(width),
  );
  const asked = { ...wanted, rules: { ...wanted.rules, buyAs: wanted.rules.buyAs ?? same?.name } };
  return {
    offer: offerFor(sheet, asked, catalog, request.system)?.name,
    sold: soldFor(asked, basis),
  };
}

const SHEETS: Deck = { kind: "sheets", spacing: undefined, closerRows: 0 };

/** The roof with another deck: its rows of purlins, or of screws in their place, are those of that deck. */
function roofOn(
  { sheet, units }: Basis,
  name: string,
  roof: CoveredRoof,
  boards: ComparedDeck | undefined,
): CoveredRoof {
  const deck = boards?.deck ?? SHEETS;
  const purlinWidth = boards?.section.width ?? number("0 in");
  const planes = roof.planes.map((plane) => {
    const slope = { slopeLength: plane.edgeLength, purlinWidth, spacing: roof.purlinSpacing, deck };
    return { ...plane, purlinRows: layPurlinRows(sheet, slope, units, `${name}.${plane.name}`) };
  });
  return { ...roof, deck, planes };
}

/** Deck boards at the rate of raising, sheets and covering at their own, trim by its length. */
function layHours({ sheet, assumed }: Basis, name: string, takeoff: CoveringTakeoff, deck: DeckCells): Cell {
  const boards = deck.volume ? [times(deck.volume, assumed.cell("raise.purlins"))] : [];
  const sheets = deckSheetsTime(takeoff, assumed);
  const trim = times(takeoff.trimLength, assumed.cell("rate.trim"));
  const all = plus(layingTime(takeoff, assumed), trim, ...boards, ...(sheets ? [sheets] : []));
  return sheet.lay(`${name}.hours`, times(all, assumed.cell("pace")), {
    label: "lay deck, covering and trim",
    display: "person-h",
  });
}
