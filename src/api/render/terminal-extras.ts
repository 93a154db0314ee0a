/** What the plan leaves of the logs, for a terminal: boards that could still come out of it. */
import type { Estimate } from "../../estimate/estimate.js";
import { type Extras, extrasOf } from "../../estimate/extras.js";
import { quantity } from "../../estimate/quantity/quantity.js";
import { marked } from "../../estimate/quantity/text.js";
import { wrap } from "./terminal-lines.js";

/** Sections named of each kind of leftover; those of most wood come first. */
const MOST_NAMED = 8;

/** One sentence for the bolts sawn, one for lengths left; nothing where no plan saws or nothing is left. */
export function extras({ basis, routes: { mix, mill } }: Estimate): string[] {
  const sawing = (mix.plan.sawing ? mix : mill)?.plan.sawing;
  if (!sawing) return [];
  const found = extrasOf(basis, sawing);
  const long = (steps: number) => marked(quantity(basis.sawing.gridMm.times(steps), "mm"), basis.request.system);
  const words = ({ section, count, lengths }: Extras): string => {
    const [longest, shortest] = [long(lengths[0]?.steps ?? 0), long(lengths.at(-1)?.steps ?? 0)];
    const of = longest === shortest ? longest : `${shortest} to ${longest}`;
    return `${count} of ${section}, ${of}`;
  };
  const told = (leftIn: Extras["leftIn"], opening: string): string[] => {
    const own = found.filter((one) => one.leftIn === leftIn);
    const more = own.slice(MOST_NAMED).reduce((sum, { count }) => sum + count, 0);
    const named = [...own.slice(0, MOST_NAMED).map(words), ...(more > 0 ? [`${more} of other sections`] : [])];
    return own.length === 0 ? [] : wrap(`  ${opening} ${named.join("; ")}.`, 4);
  };
  const lines = [
    ...told("sawn", "Slabs, edges and offcuts of the bolts sawn would still give, rough:"),
    ...told("unsawn", "Lengths of the same logs that are not sawn would give:"),
  ];
  return lines.length === 0 ? [] : ["LEFT OVER, beyond the plan; no hours or amounts are counted for it", ...lines];
}
