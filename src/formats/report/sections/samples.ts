/** What went to the laboratory, and what it adds up to. */
import { organById } from "../../../knowledge/index.ts";
import type { ReportPig, ReportWords } from "../../../report/index.ts";
import { heading, list, table, text } from "../../page/blocks.ts";
import type { Part } from "../blocks.ts";

export const samples: Part = ({ pigs }, words) => {
  const rows = pigs.flatMap(({ id, samples: all }) =>
    all.map((one) => [
      one.id,
      id,
      words.name(organById(one.from) === undefined ? "materials" : "organs", one.from),
      one.into === null ? "" : words.name("containers", one.into),
      resultsOf(one, words),
    ]),
  );
  return rows.length === 0
    ? [text(words.say("no_samples"))]
    : table(
        (["sample", "of_pig", "from", "into", "result"] as const).map((head) => ({
          head: words.say(head),
        })),
        rows,
      );
};

/** `PCR, Mycoplasma hyopneumoniae: positive`; what is still waited for comes last. */
function resultsOf({ results, open }: ReportPig["samples"][number], words: ReportWords): string {
  const came = results.map(({ test, of, said }) => {
    const what = [words.name("tests", test), of].filter((part) => part !== null).join(", ");
    return said === null ? what : `${what}: ${isReading(said) ? words.say(said) : said}`;
  });
  const waited = open.map((test) => `${words.name("tests", test)}: ${words.say("no_result")}`);
  return [...came, ...waited].join("; ");
}

const isReading = (said: string): said is "positive" | "negative" | "inconclusive" =>
  ["positive", "negative", "inconclusive"].includes(said);

export const diagnoses: Part = (report, words, audience) => [
  ...written(report, words, audience),
  ...fitting(report, words, audience),
];

const written: Part = ({ pigs }, words) =>
  (["morphologic", "aetiologic", "differentials"] as const).flatMap((kind) => {
    const told = new Map<string, number>();
    for (const { diagnosis } of pigs)
      for (const words of diagnosis[kind]) told.set(words, (told.get(words) ?? 0) + 1);
    return list(
      told.size === 0 ? null : words.say(kind),
      [...told].map(([diagnosis, times]) => (pigs.length > 1 ? `${diagnosis} (${times})` : diagnosis)),
    );
  });

/** What the findings fit. The statements of the knowledge are English; in other languages they are counted. */
const fitting: Part = ({ fits }, words) =>
  fits.flatMap(({ name, favour, against, unseen }, index) => [
    ...(index === 0 ? [heading(words.say("fits"), { level: 3 })] : []),
    text(words.say("fit", { name, favour: favour.length, against: against.length })),
    ...(words.language === "en"
      ? [...list(words.say("for_it"), favour), ...list(words.say("against_it"), against)]
      : []),
    ...list(
      words.say("unseen"),
      unseen.map((organ) => words.name("organs", organ)),
    ),
  ]);
