/** What panels of a roof are ordered by: how many lie up each slope, and the stock length that each is cut from. */
import type { CoveringOffer } from "../../catalog/offers/covering.js";
import type { Decimal } from "../quantity/decimal.js";
import { aside } from "../sheet/aside.js";
import type { CoveringTakeoff } from "../takeoff/covering.js";

/** Steps of an order, by what they are steps of. */
export interface PanelSteps {
  readonly counts: readonly (readonly [what: string, count: Decimal])[];
  /** Millimetres; none where panels are cut to order, by any length. */
  readonly stock: readonly (readonly [what: string, length: Decimal])[];
}

/** Of every slope; where panels of a slope differ, as on a hip, the stock of them all together. */
export function panelSteps({ faces, panels, needs, work }: CoveringTakeoff): PanelSteps {
  if (!panels) return { counts: [], stock: [] };
  const of = (name: string): string => (faces.length === 1 ? "a slope" : `the ${name} slope`);
  const up = faces.map(({ face, up }) => [`panels up ${of(face.name)}`, aside(up)] as const);
  const counts = [["panels", aside(panels.panels)] as const, ...up];
  const stockOf = stockLengths(work.offer);
  if (!stockOf) return { counts, stock: [] };
  if (faces.every(({ pieceLength }) => pieceLength)) {
    const stock = faces.flatMap(({ face, pieceLength }) => {
      const length = pieceLength && stockOf(aside(pieceLength));
      return length ? [[faces.length === 1 ? "panels" : `panels of ${of(face.name)}`, length] as const] : [];
    });
    return { counts, stock };
  }
  const cuts = needs.flatMap(({ item }) =>
    item.kind === "covering" && item.part === "panel" ? (item.cuts ?? []) : [],
  );
  const lengths = cuts.map(({ length, count }) => stockOf(aside(length))?.times(aside(count)));
  const all = lengths.reduce((sum, next) => sum && next && sum.plus(next));
  return { counts, stock: all ? [["all panels together", all] as const] : [] };
}

/** The shortest length sold that a panel can be cut from. */
function stockLengths(offer: CoveringOffer | undefined): ((length: Decimal) => Decimal | undefined) | undefined {
  if (offer?.sheets.form !== "panels" || offer.sheets.sold.by !== "piece") return undefined;
  const { lengths } = offer.sheets.sold;
  return (length) => lengths.find((sold) => sold.length.value.gte(length))?.length.value;
}
