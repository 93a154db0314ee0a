/** Where fasteners must last, and the least protection that does. */
import { type CorrosionClassId, corrosionClassIds, type Exposure, lasts } from "../../catalog/fasteners.js";
import { tanninOf } from "../../catalog/species.js";

/** Woods that a group may be made of, by id, and whether they are preservative-treated. */
export interface WoodInUse {
  readonly woods: readonly string[];
  readonly treated: boolean;
}

/** An open shelter stands outdoors; one tannin-rich wood among those that may be used is enough to ask for more. */
export function exposureIn({ woods, treated }: WoodInUse): Exposure {
  return { outdoors: true, treated, tannin: woods.some((wood) => tanninOf(wood) === "rich") };
}

/** A fastener through several pieces must last in each of them. */
export function together(exposures: readonly Exposure[]): Exposure {
  const any = (of: keyof Exposure) => exposures.some((exposure) => exposure[of]);
  return { outdoors: any("outdoors"), treated: any("treated"), tannin: any("tannin") };
}

/** The least class that lasts; stainless lasts everywhere. */
export function leastClass(exposure: Exposure): CorrosionClassId {
  return corrosionClassIds.find((id) => lasts(id, exposure)) ?? "stainless";
}
