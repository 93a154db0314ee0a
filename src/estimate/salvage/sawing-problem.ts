/**
 * The question a sawing plan answers, and the form of a plan: whole steps of a grid, no decimals, no solver.
 *
 * Cross-sections are whole steps (1/16 in, or 1 mm). Kerfs and rough sizes are rounded up to the grid, wood is
 * rounded down. Lengths along the log use the same steps: pieces up, wood down. z runs from the small end.
 */

/** Round hole of unsound heart about the log's axis. */
export interface HeartRot {
  /** Diameters at the small and the large end, grid steps; 0 = sound at that end. */
  readonly smallEnd: number;
  readonly largeEnd: number;
}

/** A log as sound wood: bark, flare and bad ends are off already. */
export interface SawLog {
  readonly name: string;
  readonly species: string;
  /** Usable length, grid steps. */
  readonly length: number;
  /** Diameters inside bark at z = 0 and z = length, grid steps; the taper between them is a straight line. */
  readonly smallDiameter: number;
  readonly largeDiameter: number;
  /** Largest distance of the axis from the chord between the end centres over the usable length, grid steps; a parabola. */
  readonly sweep: number;
  readonly rot: HeartRot;
  /** Thickness of bark on one side, grid steps: counts only against the mill's throat. */
  readonly bark: number;
  /** What this log costs when it is sawn, beside what each log does: its way to the mill, what it would fetch. Absent: nothing. */
  readonly ready?: { readonly cash: number; readonly hours: number };
}

/** `any`; `free`: keeps clear of the pith; `boxed`: contains the pith (posts, heavy beams). */
export type HeartRule = "any" | "free" | "boxed";

/** Equal rough pieces wanted from the logs. */
export interface SawGroup {
  readonly name: string;
  /** Rough section and length, grid steps; thickness ≤ width. */
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** Pieces wanted, spares for fall-down included. */
  readonly count: number;
  /** Species that serve; empty = any. */
  readonly species: readonly string[];
  readonly heart: HeartRule;
  /** Wane allowed on each corner of a wide face, grid steps. */
  readonly wane: number;
  /** What one piece costs when bought, less the dressing that a sawn one would take: cash and hours. */
  readonly buy: { readonly cash: number; readonly hours: number };
  /** To be sawn before all that is not; its price says so to a search, and this to a rule that knows no prices. */
  readonly pinned?: boolean;
}

/** Limits of mill and shop, grid steps. */
export interface SawShop {
  readonly millKerf: number;
  readonly ripKerf: number;
  readonly crossKerf: number;
  readonly buckKerf: number;
  /** Thickest slab that the rip saw edges; a thicker one is ripped on the mill with its kerf. */
  readonly deepestRip: number;
  readonly longestBolt: number;
  /** Largest diameter, bark included, that passes the mill; 0 = no limit. */
  readonly throat: number;
  /**
   * Thinnest layer that the mill leaves between two of its cuts: a slab of the stack, wanted or waste, and a strip that
   * the mill rips. Absent or 0: any. The outermost slabs of a bolt, with bark on one face, may be thinner.
   */
  readonly thinnestSlab?: number;
  /** Diameter about the axis that a `free` piece keeps clear of and a `boxed` piece contains. */
  readonly pith: number;
}

/** What work costs. Areas in square feet, lengths in feet. */
export interface SawRates {
  /** Value of a person-hour, money. */
  readonly wage: number;
  readonly logHours: number;
  readonly logCash: number;
  readonly boltHours: number;
  /** Each cut by the mill: handling, then face area. */
  readonly millCutHours: number;
  readonly millHoursPerFt2: number;
  readonly millCashPerFt2: number;
  /** Each rip cut on the rip saw: handling, then length. */
  readonly ripCutHours: number;
  readonly ripHoursPerFt: number;
  readonly ripCashPerFt: number;
  readonly crosscutHours: number;
}

/** The question a sawing plan answers: logs, groups, shop and rates, in whole steps of one grid. */
export interface SawingProblem {
  /** Size of one step in millimetres, as a decimal text: "1.5875" for 1/16 in, "1" for metric. */
  readonly gridMm: string;
  readonly logs: readonly SawLog[];
  readonly groups: readonly SawGroup[];
  readonly shop: SawShop;
  readonly rates: SawRates;
}

/** Which saw makes a cut: crosscut into bolts, mill, rip, or crosscut to length. */
export type SawTool = "buck" | "mill" | "rip" | "cross";

/**
 * One through-cut. Part 0 is the log; cut i splits its part into parts 2i + 1 (lower side) and 2i + 2.
 * Kerf is [lo, hi] along `axis`; x and y are about the bolt's sawing axis, z along the log.
 */
export interface SawCut {
  readonly tool: SawTool;
  readonly axis: "x" | "y" | "z";
  readonly part: number;
  readonly lo: number;
  readonly hi: number;
}

/** A piece that is exactly its part; its box in grid steps. */
export interface SawnPiece {
  readonly group: string;
  readonly part: number;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
  readonly z1: number;
}

/** Cuts and pieces of one log. */
export interface LogPlan {
  readonly log: string;
  readonly cuts: readonly SawCut[];
  readonly pieces: readonly SawnPiece[];
}

/** A plan for all logs. Logs without a plan are left lying. Pieces beyond a group's count are spare. */
export interface SawingPlan {
  readonly gridMm: string;
  readonly logs: readonly LogPlan[];
  /** Pieces short of the count, by group: what has to be bought. Only groups that are short are listed. */
  readonly buy: Readonly<Record<string, number>>;
}
