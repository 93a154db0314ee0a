/** Sentences of the verdict, in which every figure that is a cell leads to its card. */
import { Fig } from "./figure.js";
import type { Estimate, Model } from "./model.js";
import { type Amount, rounded } from "./words.js";

type Figure = Amount & { readonly cell: string };

interface ToldProps {
  readonly m: Model;
  readonly answer: Estimate;
  readonly text: string;
  /** The piece group that it is said of; its figures go before others of the same amount. */
  readonly group?: string;
}

/** Money with its sign, and hours: what a sentence may name a cell by. */
const FIGURE = /((?:CA|A)?[$€£][\d\u202f.]*\d|\d[\d.]* (?:person-)?hours?\b)/;

/** The sentence. What no cell holds, such as a proven bound, stays as words. */
export function Told({ m, answer, text, group }: ToldProps) {
  const known = figuresOf(answer, group);
  return (
    <>
      {text.split(FIGURE).map((part, index) => {
        const found = index % 2 === 1 ? known.find((one) => isWrittenAs(one, part)) : undefined;
        return found ? <Fig m={m} of={found} text={part} /> : part;
      })}
    </>
  );
}

/** Whether a figure, rounded as the text rounds it, reads like that. */
function isWrittenAs({ value, unit }: Figure, text: string): boolean {
  const isTime = /hours?$/.test(text);
  const digits = text.replaceAll(/[^\d.]/g, "");
  if (isTime !== /^(person-)?h$/.test(unit)) return false;
  const places = digits.split(".")[1]?.length ?? 0;
  return Number(rounded(value, places).replace("-", "")) === Number(digits);
}

/** All that a verdict speaks of, the nearest first. */
function figuresOf({ decision, sheet }: Estimate, group: string | undefined): Figure[] {
  const { mix, mill, hired, routes, best, groups, breakEvenPrice, priceNow } = decision;
  // Where a mix is the best, milling all is not spoken of by what it saves: a bound of the same amount is another thing.
  const compared = group === undefined ? [mix ?? mill, hired] : groups.filter((one) => one.group === group);
  const bestFirst = [...routes.filter(({ route }) => route === best), ...routes];
  const hour = sheet.blocks.flatMap(({ cells }) => cells).find(({ name }) => name === VALUE_OF_HOUR);
  return [
    ...compared.flatMap((one) => (one ? [one.cashSaved, one.extraHours, one.payPerHour] : [])),
    ...(hour ? [{ ...hour, cell: hour.name }] : []),
    ...bestFirst.flatMap(({ cash, hours }) => [cash, hours]),
    ...[breakEvenPrice, priceNow].filter((one) => one !== null),
  ];
}

const VALUE_OF_HOUR = "labor.valueOfHour";
