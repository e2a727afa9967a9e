import { isOfUnknown, photographs } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const photoWithoutSubject: CaseRule = {
  id: "photo-without-subject",
  scope: "case",
  family: "photographs",
  level: "note",
  summary: "A photograph says what it shows.",
  protects: "By evening, thirty red pictures look alike.",
  lookAlike:
    "A file whose name holds the organ (01-lungs.jpg) or carcass says what it shows, and needs no shows.",
  source: practice("common practice of photographing specimens: each picture is labelled"),
  bad: { case: "photos: [IMG_2041.jpg]", files: ["IMG_2041.jpg"] },
  good: {
    case: "photos: [{file: IMG_2041.jpg, shows: respiratory.lungs, scale: yes}]",
    files: ["IMG_2041.jpg"],
  },
  check(one, report) {
    for (const photo of photographs(one))
      if (isOfUnknown(photo))
        report(
          `${photo.file}: what does it show? Write {file: ${photo.file}, shows: respiratory.lungs}, or carcass.`,
          photo.path,
        );
  },
};
