/** How the best mix was found, and the mixes between, as JSON. */
import { z } from "zod";
import { measuredValue } from "../../../catalog/reading.js";
import type { Basis } from "../../../estimate/basis.js";
import type { FrontierPoint } from "../../../estimate/compare/envelope.js";
import { milledIn } from "../../../estimate/compare/group-reasons.js";
import type { MixSearched } from "../../../estimate/frontier.js";
import { Decimal, fixed, ZERO } from "../../../estimate/quantity/decimal.js";
import { minorDigits } from "../../../estimate/quantity/unit.js";
import { aside } from "../../../estimate/sheet/aside.js";
import { decimalField } from "./figures.js";

const words = (describe: string) => z.array(z.string()).describe(describe);

export const SearchSchema = z
  .strictObject({
    tried: z.int().describe("Mixes that were planned and priced as whole routes."),
    possible: z.int().describe("Mixes that there are; the parts of one run change sides together."),
    covers: z.string().describe("What the best mix is known to be better than."),
    least: measuredValue
      .nullable()
      .describe(
        "Proven: no mix, each piece sawn or bought by itself, as any of the offers that serve for it equally well, totals less in cash and hours; null where nothing is proven.",
      ),
    gap: decimalField("")
      .nullable()
      .describe(
        "(total − least) ÷ total of the best mix: the most that a better one could save; null without `least`.",
      ),
    bestFrom: measuredValue
      .nullable()
      .describe(
        "Value of an hour from which on the best mix is the best of all that were priced here, and with options.frontier of all that were searched for such values; an estimate at one of them tries other mixes, and may find a better one. Null where limits chose it.",
      ),
    bestTo: measuredValue.nullable().describe("Up to which; null where at any higher value."),
    buyingFrom: measuredValue
      .nullable()
      .describe(
        "Value of an hour above which buying everything is better than every mix that was priced here: with `mix.payPerHour` it makes the interval in which milling stops to pay; null where some mix takes fewer hours and costs less.",
      ),
    mixedSizesSave: measuredValue
      .nullable()
      .describe("What `options.mixedSizes` would take off the total; null where no plan found is better by it."),
    frontierGap: z
      .strictObject({
        from: measuredValue.describe("From this value of an hour on."),
        to: measuredValue.describe("Up to this one."),
        gap: decimalField("A share.").describe(
          "The most that a mix may total less than the best of the frontier, as a share.",
        ),
      })
      .meta({ id: "FrontierGap", description: "How much better than the frontier any mix could be." })
      .nullable()
      .describe("With options.frontier, proven: between two values of an hour; null where nothing is."),
    leastCovers: z.string().nullable().describe("Which plans `least` is proven for; R1 is told with each sawing plan."),
  })
  .meta({ id: "MixSearch", description: "How well the best mix is searched." });

const SwitchSchema = z
  .strictObject({
    group: z.string().describe("Name of the group."),
    milled: decimalField("Pieces of it that this mix mills."),
    before: decimalField("Pieces of it that the mix before mills."),
  })
  .meta({ id: "FrontierSwitch", description: "A group that changes sides, or some of whose pieces do." });

export const FrontierSchema = z
  .strictObject({
    mills: words("Names of the groups that it mills."),
    hired: z.boolean().describe("Whether a hired sawyer mills them."),
    cash: measuredValue.describe("Cash of this mix."),
    hours: measuredValue.describe("Person-hours of this mix."),
    fromWage: measuredValue.describe("Value of an hour from which on it is the best of those found."),
    toWage: measuredValue
      .nullable()
      .describe("Up to which; null on the last one, which is the best at any higher value."),
    switches: z
      .array(SwitchSchema)
      .describe("Groups of which it mills more pieces than the mix before it, or fewer; empty for the first."),
  })
  .meta({ id: "FrontierMix", description: "The best mix over a stretch of values of an hour." });

const ALL_TRIED = "every mix, each with the plans of a careful sawyer's rule";
const SOME_TRIED = "all milled, all bought, the mixes tried, and a plan that saws or buys piece by piece";
const LEAST_COVERS = "every mix of sawn and bought pieces, whatever lengths are bought, with sawing plans of family R1";
/** Places of a gap: a hundredth of a per cent. */
const GAP_PLACES = 4;

/** What is proven, up to the last place, so that it holds as it is shown. */
const proven = (gap: Decimal): string => fixed(gap.toDecimalPlaces(GAP_PLACES, Decimal.ROUND_UP), GAP_PLACES);

/** How the best mix was found. */
export function shownSearch(
  { tried, possible, bound, gap, standing, frontierGap }: MixSearched,
  currency: string,
): z.output<typeof SearchSchema> {
  const places = minorDigits(currency) ?? 2;
  const { hour, buying, mixedSizes } = standing;
  const rate = (of: Decimal) => ({ value: fixed(of, places), unit: `${currency}/person-h` });
  const wage = (of: Decimal | undefined) => (of ? rate(of) : null);
  return {
    tried,
    possible,
    covers: tried >= possible ? ALL_TRIED : SOME_TRIED,
    least: bound ? { value: fixed(bound.least, places), unit: currency } : null,
    gap: gap ? proven(gap) : null,
    bestFrom: wage(hour?.from),
    bestTo: wage(hour?.to),
    buyingFrom: wage(buying?.from),
    mixedSizesSave: mixedSizes ? { value: fixed(mixedSizes, places), unit: currency } : null,
    frontierGap: frontierGap
      ? { from: rate(frontierGap.from), to: rate(frontierGap.to), gap: proven(frontierGap.gap) }
      : null,
    leastCovers: bound ? LEAST_COVERS : null,
  };
}

/** What the cells of the mix say, to the cent and the hundredth of an hour. */
export function shownMix(
  basis: Basis,
  shown: FrontierPoint,
  { before, next }: { readonly before: FrontierPoint | undefined; readonly next: FrontierPoint | undefined },
): z.output<typeof FrontierSchema> {
  const { point, fromWage } = shown;
  const { currency } = basis.catalog;
  const places = minorDigits(currency) ?? 2;
  const { cash, hours } = point;
  const wage = (of: Decimal) => ({ value: fixed(of, places), unit: `${currency}/person-h` });
  const milled = point.plan?.sawn ?? point.milled;
  return {
    mills: [...milled],
    hired: point.plan?.hired ?? false,
    cash: { value: fixed(cash, places), unit: currency },
    hours: { value: fixed(hours, 2), unit: "person-h" },
    fromWage: wage(fromWage),
    toWage: next ? wage(next.fromWage) : null,
    switches: before ? switchesOf(basis, before, shown) : [],
  };
}

/** Groups of which the one plan mills more pieces than the other, or fewer. */
function switchesOf({ groups }: Basis, before: FrontierPoint, now: FrontierPoint): z.output<typeof SwitchSchema>[] {
  return groups.flatMap(({ group: { name, count } }) => {
    const pieces = ({ point: { plan } }: FrontierPoint) => (plan ? milledIn(plan, name, aside(count)) : ZERO);
    const [was, is] = [pieces(before), pieces(now)];
    return was.eq(is) ? [] : [{ group: name, milled: is.toFixed(), before: was.toFixed() }];
  });
}
