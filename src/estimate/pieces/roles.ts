/**
 * What each role of piece is by default: section, treatment and how it is joined.
 *
 * Sections are common practice for small open shelters and no statement that they carry anything; they are listed as
 * defaults in every answer that uses them.
 */
import type { InEither } from "../request/given.js";
import type { JointKind, Role } from "../request/structure.js";

/** What is taken of a piece by its role where the request is silent. */
export interface RoleDefaults {
  /** First letter of the piece mark. */
  readonly mark: string;
  readonly section: InEither;
  readonly heart: "any" | "free" | "boxed";
  readonly surface: "rough" | "dressed";
  readonly seasoning: "green" | "dried";
  readonly structural: boolean;
  readonly hiddenFaces: "none" | "one-wide" | "both-wide";
  readonly joint: JointKind;
}

/** Common practice, no source. Timbers over 4 in are built green with the heart boxed and season in place. */
export const ROLE_DEFAULTS: Readonly<Record<Role, RoleDefaults>> = {
  post: timber("P", "6 x 6 in", "150 x 150 mm", "boxed", "post-top"),
  beam: timber("B", "4 x 8 in", "100 x 200 mm", "any", "splice"),
  tie: timber("T", "4 x 8 in", "100 x 200 mm", "any", "lap"),
  ridge: stick("D", "2 x 8 in", "50 x 200 mm", "splice"),
  rafter: stick("R", "2 x 6 in", "50 x 150 mm", "birdsmouth"),
  brace: timber("K", "4 x 4 in", "100 x 100 mm", "any", "brace"),
  purlin: { ...stick("U", "2 x 4 in", "50 x 100 mm", "crossing"), surface: "rough", hiddenFaces: "one-wide" },
  fascia: { ...stick("F", "1 x 6 in", "25 x 150 mm", "face"), structural: false, hiddenFaces: "one-wide" },
  board: { ...stick("A", "1 x 6 in", "25 x 150 mm", "crossing"), structural: false },
  other: { ...stick("X", "2 x 4 in", "50 x 100 mm", "none"), structural: false },
};

function timber(
  mark: string,
  inch: string,
  metric: string,
  heart: RoleDefaults["heart"],
  joint: JointKind,
): RoleDefaults {
  const section = { "inch-pound": inch, metric };
  return { mark, section, heart, surface: "rough", seasoning: "green", structural: true, hiddenFaces: "none", joint };
}

function stick(mark: string, inch: string, metric: string, joint: JointKind): RoleDefaults {
  const section = { "inch-pound": inch, metric };
  return {
    mark,
    section,
    heart: "any",
    surface: "dressed",
    seasoning: "dried",
    structural: true,
    hiddenFaces: "none",
    joint,
  };
}
