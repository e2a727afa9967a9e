/** A finding on the turbinates that looks like the stain of bone dust. */
import type { Case } from "../cases/index.ts";
import type { PlacedFinding } from "./findings-of.ts";
import { lesions } from "./lesions.ts";

export const stainedByDust = (one: Case): PlacedFinding | undefined =>
  lesions(one, { processes: ["discolouration", "icterus"], within: ["respiratory.turbinates"] }).find(
    ({ finding }) => finding.colour === "yellow" || finding.colour === "tan",
  );
