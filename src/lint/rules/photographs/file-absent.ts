/** Files that a case names and that do not lie where it says. */
import { kindOf } from "../../../cases/files/file-kind.ts";
import type { Case, Path } from "../../../cases/index.ts";
import { besideCase, isAbsent, photographs, tracings } from "../../../record/index.ts";
import { type CaseRule, practice, type RuleRow } from "../../rule.ts";

interface FilesOfCase extends RuleRow {
  readonly noun: string;
  files(one: Case): readonly { readonly file: string; readonly path: Path }[];
}

const rows: readonly FilesOfCase[] = [
  {
    id: "photo-absent",
    level: "error",
    summary: "Every photograph that a case names is where it says.",
    protects: "A picture left on the phone is gone when the phone is, and the carcass is gone already.",
    lookAlike:
      "A picture that is still on the camera: leave it out of photos until it lies beside the case. A path begins at the folder of the case, not of the visit.",
    source: practice("common practice of filing"),
    bad: { case: "photos: [{file: photos/01-lungs.jpg, shows: respiratory.lungs, scale: yes}]" },
    good: {
      case: "photos: [{file: photos/01-lungs.jpg, shows: respiratory.lungs, scale: yes}]",
      files: ["photos/01-lungs.jpg"],
    },
    noun: "photograph",
    files: photographs,
  },
  {
    id: "tracing-absent",
    level: "error",
    summary: "Every tracing that a case names is where it says.",
    protects: "Areas are measured from the tracing; without the file the ratio cannot be measured again.",
    lookAlike:
      "A tracing that was measured and thrown away: take the key tracing out, for what was measured from it can no longer be shown.",
    source: practice("common practice of filing"),
    bad: { case: "respiratory: {turbinates: {tracing: tracings/pig-01.svg}}" },
    good: {
      case: "respiratory: {turbinates: {tracing: tracings/pig-01.svg}}",
      files: ["tracings/pig-01.svg"],
    },
    noun: "tracing",
    files: tracings,
  },
];

export const fileAbsentRules: readonly CaseRule[] = rows.map(({ noun, files, ...row }) => ({
  ...row,
  scope: "case",
  family: "photographs",
  check(one, report) {
    for (const { file, path } of files(one))
      if (isAbsent(one, file)) {
        const isThere = ["file", "folder"].includes(kindOf(besideCase(one, file)));
        const what = isThere
          ? `${file} beside this case is no plain file and can be no ${noun}`
          : `there is no ${noun} ${file} beside this case`;
        report(
          `${what}. Copy it there, or correct the name; the path starts from the folder of the case.`,
          path,
        );
      }
  },
}));
