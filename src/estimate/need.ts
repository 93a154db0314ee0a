/**
 * What has to be had, before anyone asks where and in which packs: a quantity of a kind of thing. Takeoffs write needs,
 * purchase turns them into lines of the shopping list; neither knows the other.
 */
import type { Cell } from "./sheet/expression.js";

/** Parts of a roof covering that are ordered by themselves. */
export type CoveringPart =
  | "panel"
  | "course"
  | "roll"
  | "board"
  | "ridge-cap"
  | "hip-cap"
  | "eave-trim"
  | "rake-trim"
  | "drip-edge"
  | "starter-strip"
  | "eave-closure"
  | "ridge-closure"
  | "batten"
  | "lap-sealant"
  | "adhesive"
  | "underlay"
  | "sheathing"
  | "deck";

/** Metal along the edges that the covering laps over: it is fitted first. */
export const BELOW_COVERING: ReadonlySet<CoveringPart> = new Set(["eave-trim", "drip-edge"]);

/** Equal pieces to be cut from what is sold. */
export interface CutToLength {
  readonly length: Cell;
  readonly count: Cell;
}

/** What a trim is fitted along, and how its pieces lap: what is sold in several lengths is ordered by these. */
export interface Fitted {
  readonly edges: readonly { readonly count: number; readonly length: Cell }[];
  /** All edges, laps not counted. */
  readonly length: Cell;
  /** Absent where pieces butt, or their laps are in their covered length. */
  readonly lap?: Cell;
}

/** Kind of thing, as a price catalog can be asked for it. */
export type NeedItem =
  | {
      readonly kind: "fastener";
      /** A fastener kind that the catalog knows, such as `roof-screw` or `carriage-bolt`. */
      readonly fastener: string;
      /** Lengths; what has none (a washer) leaves it out. */
      readonly diameter?: Cell;
      readonly length?: Cell;
      /** Both sides of the post that a base takes. */
      readonly fits?: readonly [Cell, Cell];
      /** Least protection against corrosion, by the catalog's classes. */
      readonly corrosion: string;
    }
  | { readonly kind: "finish"; readonly finish: string }
  | {
      readonly kind: "covering";
      readonly covering: string;
      readonly part: CoveringPart;
      /** Length of one piece, where pieces of one length are wanted. */
      readonly pieceLength?: Cell;
      /** Pieces by their lengths: panels and boards, which are cut from stock lengths or to order. */
      readonly cuts?: readonly CutToLength[];
      /** Trims. */
      readonly fitted?: Fitted;
      /** Boards or purlins of a deck: their section, and the lumber offer that serves; none where nothing does. */
      readonly boards?: { readonly section: readonly [thickness: Cell, width: Cell]; readonly offer?: string };
    }
  | { readonly kind: "consumable"; readonly item: string }
  | { readonly kind: "service"; readonly item: string };

/** An item of one kind. */
export type ItemOf<Kind extends NeedItem["kind"]> = Extract<NeedItem, { kind: Kind }>;

/** Something the job needs: what it is, and how much of it. */
export interface Need {
  /** Unique; names the line of the shopping list. */
  readonly name: string;
  readonly label: string;
  readonly item: NeedItem;
  /** Pieces, length, area, volume or mass, waste and spares included. */
  readonly quantity: Cell;
  /** Groups whose joints it holds, where it is hardware of the frame. */
  readonly joins?: readonly string[];
}
