/**
 * What a plan gets out of its logs beside what they scale: overrun against the log rules, recovery of the cubic volume.
 * Lumber is reckoned as sawn, rough and full, spares included.
 */
import { type Cell, minus, number, type Operand, over, plus, sumOr, times } from "../sheet/expression.js";
import type { Sheet } from "../sheet/sheet.js";
import type { MeasuredPlan } from "./cut-cells.js";
import { huber, newton } from "./log-rules.js";
import type { SoundLog } from "./sound-wood.js";

/** Log rules, as people call them. */
export const BOARD_RULES = { international: "International 1/4-inch", scribner: "Scribner", doyle: "Doyle" } as const;
/** Formulas of cubic volume. */
export const CUBIC_RULES = { smalian: "Smalian", huber: "Huber", newton: "Newton" } as const;
type BoardRule = keyof typeof BOARD_RULES;
type CubicRule = keyof typeof CUBIC_RULES;

/** The logs that are sawn, by one rule. */
export interface ScaledBy<Rule extends string> {
  readonly rule: Rule;
  readonly scale: Cell;
  /** Overrun: lumber over scale, less one. Recovery: lumber over volume. Undefined where the scale is nothing. */
  readonly share: Cell | undefined;
}

/** Lumber of a plan, and the logs that it saws by every rule. */
export interface YieldCells {
  readonly lumber: Cell;
  readonly board: readonly ScaledBy<BoardRule>[];
  readonly cubic: readonly ScaledBy<CubicRule>[];
}

/** Logs of which a plan saws at least one bolt. */
export function logsSawn(logs: readonly SoundLog[], { measures }: Pick<MeasuredPlan, "measures">): SoundLog[] {
  const sawn = new Set(measures.logs.filter(({ boltsSawn }) => boltsSawn > 0).map(({ log }) => log));
  return logs.filter(({ name }) => sawn.has(name));
}

/** Lays yield and scale of a plan under `key`. @param logs - Those that it saws. */
export function layYield(
  sheet: Sheet,
  key: string,
  sawn: Operand,
  logs: readonly SoundLog[],
  units: { readonly lumber: string; readonly log: string },
): YieldCells {
  const lumber = sheet.lay(`${key}.yield.lumber`, sawn, { label: "lumber sawn, rough", display: units.lumber });
  const scaled = <Rule extends string>(rule: Rule, words: string, display: string, each: readonly Cell[]): Cell =>
    sheet.lay(`${key}.scale.${rule}`, sumOr(each, display), { label: `logs sawn, ${words}`, display });
  const share = (name: string, label: string, scale: Cell, formula: Operand): Cell | undefined =>
    sheet.decide(scale).isZero() ? undefined : sheet.lay(`${key}.${name}`, formula, { label, display: "%" });
  const board = (Object.keys(BOARD_RULES) as BoardRule[]).map((rule) => {
    const words = BOARD_RULES[rule];
    const each = logs.map((log) => log.scale[rule]);
    const scale = scaled(rule, words, "bf", each);
    return {
      rule,
      scale,
      share: share(`overrun.${rule}`, `overrun, ${words}`, scale, minus(over(lumber, scale), number("1"))),
    };
  });
  const cubic = (Object.keys(CUBIC_RULES) as CubicRule[]).map((rule) => {
    const words = CUBIC_RULES[rule];
    const scale = scaled(
      rule,
      words,
      units.log,
      logs.map((log) => cubicOf(sheet, log, rule, units.log)),
    );
    return { rule, scale, share: share(`recovery.${rule}`, `recovery, ${words}`, scale, over(lumber, scale)) };
  });
  return { lumber, board, cubic };
}

/** A log's cubic volume; of straight taper, so half-way along it is half-way between its ends. */
function cubicOf(sheet: Sheet, log: SoundLog, rule: CubicRule, display: string): Cell {
  const { smallDiameter, largeDiameter, length, scale } = log;
  if (rule === "smalian") return scale.smalian;
  const name = `logs.${log.name}.${rule}`;
  const middle = times(plus(smallDiameter, largeDiameter), number("0.5"));
  const formula = rule === "huber" ? huber(middle, length) : newton(smallDiameter, middle, largeDiameter, length);
  return sheet.find(name) ?? sheet.lay(name, formula, { label: `cubic, ${CUBIC_RULES[rule]}`, display });
}
