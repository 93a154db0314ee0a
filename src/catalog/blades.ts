/** What a mill cuts with: what wears out, how its edge is renewed, and what each is called. */
import type { ConsumableItem } from "./offers/supplies.js";

/** What a mill cuts with. */
export type BladeKind = "chain" | "band" | "circular";

/** Who renews the edge: the user, or a service for money. */
export type Sharpening = "self" | "service";

/** One way of renewing an edge. */
interface Renewal {
  /** Assumption of the person-time each time. */
  readonly rate: string;
  /** Whether the mill stands meanwhile: not where a band is ground while another one cuts. */
  readonly stopsMill: boolean;
}

/** Items, words and ways of one kind. */
export interface Blade {
  /** What is worn out in parts of one, and the words on its line. */
  readonly item: ConsumableItem;
  readonly worn: string;
  readonly plural: string;
  /** What a service is paid for. */
  readonly service: ConsumableItem;
  /** What is worn down where the user sharpens, and the assumption of how many sharpenings one lasts. */
  readonly tool: { readonly item: ConsumableItem; readonly worn: string; readonly each: string };
  /** Who renews the edge where nothing is said. Common practice. */
  readonly usually: Sharpening;
  readonly renewal: Readonly<Record<Sharpening, Renewal>>;
}

const FILES = { item: "files", worn: "Files, wear", each: "sharpen.perFile" } as const;
const WHEEL = { item: "grinding-wheel", worn: "Grinding wheels, wear", each: "sharpen.perWheel" } as const;

/** A chain is filed on the saw and a circular blade ground on the mill; a band goes to the sharpener, or to a grinder. */
export const BLADES: Readonly<Record<BladeKind, Blade>> = {
  chain: {
    item: "chain",
    worn: "Ripping chain, wear",
    plural: "chains",
    service: "chain-sharpening",
    tool: FILES,
    usually: "self",
    renewal: {
      self: { rate: "sharpen.chain", stopsMill: true },
      service: { rate: "sharpen.change", stopsMill: true },
    },
  },
  band: {
    item: "band",
    worn: "Band, wear",
    plural: "bands",
    service: "band-sharpening",
    tool: WHEEL,
    usually: "service",
    renewal: {
      self: { rate: "sharpen.bandGrind", stopsMill: false },
      service: { rate: "sharpen.band", stopsMill: true },
    },
  },
  circular: {
    item: "circular-blade",
    worn: "Circular blade, wear",
    plural: "circular blades",
    service: "circular-sharpening",
    tool: WHEEL,
    usually: "self",
    renewal: {
      self: { rate: "sharpen.circular", stopsMill: true },
      service: { rate: "sharpen.circularChange", stopsMill: true },
    },
  },
};
