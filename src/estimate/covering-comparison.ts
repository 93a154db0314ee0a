/**
 * One roof under several coverings, side by side: each a whole system with its deck as bought, priced and taxed, with hours,
 * weight, and cost for each year that it lasts. A covering that the code does not allow is shown and flagged, never dropped.
 */
import { type CoveringKind, coveringKinds, coveringName } from "../catalog/coverings.js";
import { boardsOf, coveringOffers } from "../catalog/look-up.js";
import type { Basis } from "./basis.js";
import { deckSheetsTime, layingTime } from "./effort/roofing.js";
import { FaultError } from "./faults.js";
import type { Need } from "./need.js";
import { deckFor, riseOn12 } from "./pieces/deck.js";
import { amountsOf, layTaxes, type ShoppingLine } from "./purchase/line.js";
import { layShoppingList } from "./purchase/shopping-list.js";
import { aside } from "./sheet/aside.js";
import { type Cell, number, over, plus, times } from "./sheet/expression.js";
import { type CoveredRoof, coveredRoof } from "./takeoff/covered-roof.js";
import { type CoveringTakeoff, layCovering } from "./takeoff/covering.js";
import { type DeckCells, layComparedDeck } from "./takeoff/deck-takeoff.js";
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
 * cost for a year of life.
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
  return rank(a) - rank(b) || yearly || byName;
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
  const takeoff = built ?? layOther(basis, kind, name, roof);
  const deck = takeoff.deck ?? layComparedDeck(takeoff.work, roof.deck.kind);
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
  const { sheet, catalog, assumed, defaults, units, request } = basis;
  const found = coveringOffers(catalog, kind);
  const offer = found.kind === "offered" ? found.offers[0] : undefined;
  const asked = "deck" in request.structure ? request.structure.deck?.kind : undefined;
  const deck = deckFor(kind, riseOn12(sheet, roof.unitRise, roof.unitRun), asked);
  const lumber = boardsOf(catalog, offer);
  const deckBoards = catalog.lumber.find((one) => one.name === offer?.deck);
  const exposure = deckExposure(basis);
  return layCovering(sheet, { kind, name, roof, offer, lumber, deckBoards, exposure, deck, assumed, defaults }, units);
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
