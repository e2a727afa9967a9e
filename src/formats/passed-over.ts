/** What is said of YAML files of other tools that were met on the way. */
import { count } from "../words/listing.ts";

/** One line, or none: what was not read must not go unsaid, and nobody has to do anything about it. */
export const passedOverLines = (files: readonly string[]): string[] =>
  files.length === 0
    ? []
    : [
        `${count(files.length, "YAML file that is no case was", "YAML files that are no cases were")} passed over; lint --format json names ${files.length === 1 ? "it" : "them"}`,
      ];
