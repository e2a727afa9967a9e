/** Rules of the family photographs, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { lesionWithoutPhoto } from "./lesion-without-photo.ts";
import { photoAbsent } from "./photo-absent.ts";
import { photoInTwoCases } from "./photo-in-two-cases.ts";
import { photoOrganUnknown } from "./photo-organ-unknown.ts";
import { photoWithoutScale } from "./photo-without-scale.ts";
import { photoWithoutSubject } from "./photo-without-subject.ts";
import { pictureElsewhere } from "./picture-elsewhere.ts";
import { tracingAbsent } from "./tracing-absent.ts";

export const photographsRules: readonly Rule[] = [
  photoAbsent,
  tracingAbsent,
  pictureElsewhere,
  photoOrganUnknown,
  photoWithoutSubject,
  lesionWithoutPhoto,
  photoWithoutScale,
  photoInTwoCases,
];
