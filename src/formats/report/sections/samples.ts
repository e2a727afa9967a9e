/** What went to the laboratory, and what it adds up to. */
import { organById } from "../../../knowledge/index.ts";
import { list, table, text } from "../../page/blocks.ts";
import type { Part } from "../blocks.ts";

export const samples: Part = ({ pigs }, words) => {
  const rows = pigs.flatMap(({ id, samples: all }) =>
    all.map((one) => [
      one.id,
      id,
      words.name(organById(one.from) === undefined ? "materials" : "organs", one.from),
      one.into === null ? "" : words.name("containers", one.into),
      one.tests.map((test) => words.name("tests", test)).join(", "),
      one.at ?? "",
    ]),
  );
  return rows.length === 0
    ? [text(words.say("no_samples"))]
    : table(
        (["sample", "of_pig", "from", "into", "tests", "taken"] as const).map((head) => ({
          head: words.say(head),
        })),
        rows,
      );
};

export const diagnoses: Part = ({ pigs }, words) =>
  (["morphologic", "aetiologic", "differentials"] as const).flatMap((kind) => {
    const told = new Map<string, number>();
    for (const { diagnosis } of pigs)
      for (const words of diagnosis[kind]) told.set(words, (told.get(words) ?? 0) + 1);
    return list(
      told.size === 0 ? null : words.say(kind),
      [...told].map(([diagnosis, times]) => (pigs.length > 1 ? `${diagnosis} (${times})` : diagnosis)),
    );
  });
