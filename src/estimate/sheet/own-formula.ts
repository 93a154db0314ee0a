/**
 * The arithmetic of a line of the user's own, from text to a tree of names and quantities:
 * `crew.days × $450 + 2 h × labor.value`, `(roof.area - 12.5 ft2) / 150 ft2/gal`.
 *
 * Signs: + − - × * · ÷ / and brackets. A number takes the longest unit that follows it, so `150 ft2/gal` is one
 * quantity; a fraction without spaces (`1/2 in`, `2 1/4 in`) is one number. Names may hold dots and hyphens, so a
 * minus sign between names needs spaces.
 */
import type { Quantity } from "../quantity/quantity.js";
import { quote, readQuantity, TextFault } from "../quantity/text.js";
import { parseUnit } from "../quantity/unit.js";

/** `at` counts characters from 0. */
export type FormulaNode =
  | { readonly kind: "quantity"; readonly value: Quantity; readonly at: number }
  | { readonly kind: "name"; readonly name: string; readonly at: number }
  | { readonly kind: "negative"; readonly of: FormulaNode; readonly at: number }
  | {
      readonly kind: "plus" | "minus" | "times" | "over";
      readonly left: FormulaNode;
      readonly right: FormulaNode;
      /** Place of the sign. */
      readonly at: number;
    };

/** Why a formula cannot be read, and what would be right. */
export class FormulaFault {
  constructor(
    readonly wrong: string,
    readonly cure: string,
  ) {}
}

/** Longest formula, in characters; and how deep brackets may be nested. Both are assumptions of what a person writes. */
const LONGEST_FORMULA = 500;
const DEEPEST_FORMULA = 50;

const NAME = /[A-Za-z][A-Za-z0-9_-]*(?:\.[A-Za-z0-9_-]+)*/y;
/** 14' 6 1/2", 14 ft 6 in. With a hyphen only behind the mark: `14 ft - 6 in` is a difference. */
const FEET_AND_INCHES =
  /\d+(?:\s*(?:ft|feet|foot)\s+|\s*['′’]\s*-?)\s*\d+(?:\.\d+)?(?:[ -]\d+\/\d+|\/\d+)?\s*(?:inches|inch|in|"|″|”|''|’’)(?![\w²³/])/y;
const MONEY = /[$€£]\s*(?:\d[\d,]*(?:\.\d+)?|\.\d+)/y;
const FRACTION = /(?:\d+ )?\d{1,5}\/(?:2|4|8|16|32|64)(?![\d.])/y;
const NUMERAL = /\d[\d,]*(?:\.\d+)?|\.\d+/y;
/** What may be a unit: up to the next sign, bracket or minus with a space before it; no unit has 60 characters. */
const UNIT_REACH = /(?:(?! [-−])[^()+×*÷−]){0,60}/y;

const SUMS: Readonly<Record<string, "plus" | "minus">> = { "+": "plus", "-": "minus", "−": "minus", "–": "minus" };
const PRODUCTS: Readonly<Record<string, "times" | "over">> = {
  "×": "times",
  "*": "times",
  "·": "times",
  "÷": "over",
  "/": "over",
};

/** Reads a formula. Never throws, whatever the text. */
export function parseFormula(text: string): FormulaNode | FormulaFault {
  if (text.length > LONGEST_FORMULA) {
    return new FormulaFault(
      `The formula has ${text.length} characters.`,
      `Keep it to ${LONGEST_FORMULA}; a long sum can be two lines, one naming the other.`,
    );
  }
  try {
    return new Parser(text).whole();
  } catch (fault) {
    if (fault instanceof FormulaFault) return fault;
    throw fault;
  }
}

class Parser {
  private at = 0;
  private depth = 0;
  constructor(private readonly text: string) {}

  whole(): FormulaNode {
    const node = this.sum();
    if (this.at < this.text.length) {
      const word = /^[\w.]+/.exec(this.text.slice(this.at))?.[0];
      this.fail(
        word === undefined ? "nothing can follow here" : `no sign stands before ${quote(word)}, and it is no unit`,
        "Write one of + − × ÷ between two values, and a unit that is known behind a number.",
      );
    }
    return node;
  }

  private sum(): FormulaNode {
    return this.chain(SUMS, () => this.product());
  }

  private product(): FormulaNode {
    return this.chain(PRODUCTS, () => this.signed());
  }

  private chain(signs: Readonly<Record<string, "plus" | "minus" | "times" | "over">>, next: () => FormulaNode) {
    let left = next();
    for (;;) {
      this.space();
      const kind = signs[this.text[this.at] ?? ""];
      if (!kind) return left;
      const at = this.at++;
      left = { kind, left, right: next(), at };
    }
  }

  private signed(): FormulaNode {
    this.space();
    if (SUMS[this.text[this.at] ?? ""] !== "minus") return this.primary();
    const at = this.at++;
    return this.deeper(() => ({ kind: "negative", of: this.signed(), at }));
  }

  private primary(): FormulaNode {
    const at = this.at;
    if (this.text[at] === "(") return this.bracketed();
    const value = this.quantity();
    if (value) return { kind: "quantity", value, at };
    const name = this.match(NAME)?.replace(/-+$/, "");
    if (name === undefined) {
      const end = at >= this.text.length;
      return this.fail(
        end ? "a value is missing at the end" : "a value is missing",
        "Give a number with its unit, such as $450 or 2 h, the name of a cell, or brackets.",
      );
    }
    this.at = at + name.length;
    return { kind: "name", name, at };
  }

  private bracketed(): FormulaNode {
    const open = this.at++;
    const inside = this.deeper(() => this.sum());
    if (this.text[this.at] !== ")") {
      this.fail(`the bracket opened at character ${open + 1} is not closed`, "Close it with ).");
    }
    this.at++;
    return inside;
  }

  private deeper(read: () => FormulaNode): FormulaNode {
    this.depth++;
    if (this.depth > DEEPEST_FORMULA) {
      this.fail(`brackets are nested deeper than ${DEEPEST_FORMULA}`, "Split the formula into two lines.");
    }
    const node = read();
    this.depth--;
    return node;
  }

  /** A number with its unit, or undefined where none begins. */
  private quantity(): Quantity | undefined {
    const begin = this.at;
    const both = this.match(FEET_AND_INCHES);
    if (both !== undefined) return this.read(begin, both);
    const money = this.match(MONEY);
    const digits = money ?? this.match(FRACTION) ?? this.match(NUMERAL);
    if (digits === undefined) return undefined;
    const unit = this.unitAfter(money?.[0]);
    return this.read(begin, `${digits}${money === undefined ? " " : ""}${unit}`);
  }

  /** The longest text behind a number that is a unit; behind `$450`, what it is paid for: `/ft`. */
  private unitAfter(currency: string | undefined): string {
    const begin = this.at;
    let reach = (this.match(UNIT_REACH) ?? "").trimEnd();
    const isUnit = (text: string): boolean => {
      // Without a space before the stroke or a digit behind it: `$450 / crew.days` and `2 h/3` are divisions.
      if (/^$|\/\s*\d|\s\/|\/\s/.test(text)) return false;
      if (currency === undefined) return parseUnit(text) !== undefined;
      return /^\/| per /.test(text) && parseUnit(currency + text) !== undefined;
    };
    while (reach !== "" && !isUnit(reach)) reach = reach.slice(0, Math.max(0, reach.search(/[\s/][^\s/]*$/)));
    this.at = begin + reach.length;
    return reach;
  }

  private read(begin: number, text: string): Quantity {
    const found = readQuantity(text);
    if (!(found instanceof TextFault)) return found;
    this.at = begin;
    return this.fail(`${quote(text.trim())} is no number`, found.cure);
  }

  private space(): void {
    while (/\s/.test(this.text[this.at] ?? "")) this.at++;
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  private fail(wrong: string, cure: string): never {
    throw new FormulaFault(`${quote(this.text)} cannot be read at character ${this.at + 1}: ${wrong}.`, cure);
  }
}

/** Names in a formula, each once, in the order they are written. */
export function namesIn(node: FormulaNode): readonly string[] {
  const names = new Set<string>();
  const visit = (part: FormulaNode): void => {
    if (part.kind === "name") names.add(part.name);
    else if (part.kind === "negative") visit(part.of);
    else if (part.kind !== "quantity") {
      visit(part.left);
      visit(part.right);
    }
  };
  visit(node);
  return [...names];
}
