/** Rules of the family photographs, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { fileAbsentRules } from "./file-absent.ts";
import { lesionWithoutPhoto } from "./lesion-without-photo.ts";
import { photoInTwoCases } from "./photo-in-two-cases.ts";
import { photoOrganUnknown } from "./photo-organ-unknown.ts";
import { photoWithoutScale } from "./photo-without-scale.ts";
import { photoWithoutSubject } from "./photo-without-subject.ts";
import { pictureElsewhere } from "./picture-elsewhere.ts";

export const photographsRules: readonly Rule[] = [
  ...fileAbsentRules,
  pictureElsewhere,
  photoOrganUnknown,
  photoWithoutSubject,
  lesionWithoutPhoto,
  photoWithoutScale,
  photoInTwoCases,
];
