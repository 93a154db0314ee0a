/** Where fasteners must last, and the least protection that does. */
import {
  type Climate,
  type CorrosionClassId,
  corrosionClassIds,
  type Exposure,
  harsher,
  lasts,
} from "../../catalog/fasteners.js";
import { tanninOf } from "../../catalog/species.js";

/** Woods that a group may be made of, by id, whether they are preservative-treated, and what surrounds them. */
export interface WoodInUse {
  readonly woods: readonly string[];
  readonly treated: boolean;
  readonly climate: Climate;
}

/**
 * One tannin-rich wood among those that may be used is enough to ask for more, save where it stays dry: below 15 to 18 %
 * moisture wood hardly eats metal (FPL, Zelinka, Corrosion of Metals in Wood Products, 2014; from memory).
 */
export function exposureIn({ woods, treated, climate }: WoodInUse): Exposure {
  return { climate, treated, tannin: climate !== "dry" && woods.some((wood) => tanninOf(wood) === "rich") };
}

/** A fastener through several pieces must last in each of them. */
export function together(exposures: readonly Exposure[]): Exposure {
  const any = (of: "treated" | "tannin") => exposures.some((exposure) => exposure[of]);
  const climate = exposures.reduce<Climate>((worst, one) => harshest(worst, one.climate), "dry");
  return { climate, treated: any("treated"), tannin: any("tannin") };
}

/** The harsher of two climates. */
export const harshest = (one: Climate, other: Climate): Climate => (harsher(one, other) ? one : other);

/** The least class that lasts; stainless lasts everywhere. */
export function leastClass(exposure: Exposure): CorrosionClassId {
  return corrosionClassIds.find((id) => lasts(id, exposure)) ?? "stainless";
}
