/** How bought sticks are cut, for a terminal: a diagram of each, to scale. */
import type { Estimate } from "../../estimate/estimate.js";
import { explainStock, placedOn, type StickSteps, squaredLength } from "../../estimate/purchase/explain-stock.js";
import { groupOnStick, type StockQuestion, stepsInMm } from "../../estimate/purchase/lumber.js";
import { marked } from "../../estimate/quantity/text.js";
import { unit } from "../../estimate/quantity/unit.js";

/** Characters of a whole stick, its ends included. */
const WIDE = 76;

/** Sticks of the best route, those cut alike in one line; nothing where none are bought. */
export function sticksDiagram({ basis: { request }, routes: { mix } }: Estimate): string[] {
  const long = (steps: number) => marked({ value: stepsInMm(request.system, steps), unit: unit("mm") }, request.system);
  const offers = mix.plan.stock.flatMap(({ question, plan }) => [
    `  ${question.offer.label}`,
    ...explainStock(question.problem, plan).map((stick) => {
      const head = `${stick.times} × ${stick.stock}`.padEnd(18);
      return `    ${head}${stickText(stick, question, long)}`;
    }),
  ]);
  return offers.length === 0 ? [] : ["STICKS  how the bought ones are cut, to scale; dots are left over", ...offers];
}

/** `|--rails 7'--|--rails 7'--|....|`; a piece too short for its name has its length alone, or neither. */
function stickText(stick: StickSteps, question: StockQuestion, long: (steps: number) => string): string {
  const { problem } = question;
  const scale = (WIDE - 1) / Math.max(1, squaredLength(problem, stick.stock));
  const at = (steps: number): number => Math.round(steps * scale);
  const characters: string[] = Array.from({ length: WIDE }, () => ".");
  for (const { group, from, to } of placedOn(stick, problem.kerf)) {
    const room = at(to) - at(from) - 1;
    const words =
      [`${groupOnStick(question, group)} ${long(to - from)}`, long(to - from), ""].find(
        (text) => text.length <= room,
      ) ?? "";
    const before = "-".repeat((room - words.length) >> 1);
    const filled = `|${(before + words).padEnd(room, "-")}|`;
    [...filled].forEach((character, i) => {
      characters[at(from) + i] = character;
    });
  }
  characters[WIDE - 1] = "|";
  return characters.slice(0, WIDE).join("");
}
