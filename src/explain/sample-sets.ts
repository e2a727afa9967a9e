/** What is taken of pigs with one complaint, and how long each kind of sample is good. */
import { organById, sampleCare, sampleSets, sourceLine, transportLimits } from "../knowledge/index.ts";
import { containerNames, materialTitle, testNames } from "../record/index.ts";
import { capital, listing } from "../words/listing.ts";
import { section, type Topic, yamlSection } from "./explanation.ts";

const titled = (from: string): string => organById(from)?.definition.title ?? capital(materialTitle(from));

export const sampleSetTopics: readonly Topic[] = [...sampleSets.values()].map(
  ({ id, title, when, words, source, pigs, compare, mates = [], samples, once = [], authority = [] }) => ({
    kind: "sample set",
    name: id,
    title: `Samples: ${title}`,
    aliases: [title],
    explain: () => ({
      sections: [
        ...section("Taken of", [
          [
            listing(when?.classes ?? ["pigs of any age"]),
            ...(when?.signs === undefined ? [] : [`with signs of ${listing([...when.signs], "or")}`]),
            ...(when?.manners === undefined ? [] : [`or ${listing(when.manners, "or")}`]),
            ...(when === undefined ? ["whose complaint names it, for no sign does"] : []),
          ].join(" "),
        ]),
        ...section(
          "Pigs",
          pigs === undefined
            ? []
            : [
                `${pigs.ill} ill${pigs.litters === undefined ? "" : ` of each of ${pigs.litters} litters`}${compare === undefined ? "" : `, ${compare.healthy} healthy: ${compare.why ?? ""}`}`,
              ],
        ),
        ...section(
          "Samples",
          samples.map(
            ({ from, into, for: tests, where, ask }) =>
              `${titled(from)}: ${containerNames([into])}, for ${testNames(tests)}${where === undefined ? "" : `, only with ${where}`}${ask === undefined ? "" : `; ask for ${ask}`}`,
          ),
        ),
        ...section(
          "Besides",
          [...mates, ...once].map(
            ({ from, into, for: tests, why }) =>
              `${titled(from)}: ${containerNames([into])}, for ${testNames(tests)}${why === undefined ? "" : `: ${why}`}`,
          ),
        ),
        ...section("Call the authority first at", authority),
        ...section("Words of a complaint that ask for it", words === undefined ? [] : [words.join(", ")]),
        ...yamlSection(
          "Changed, in carcase.yaml",
          `samples: {sets: {${id}: {leave_out: ["${samples[0]?.from} into ${samples[0]?.into}"]}}}`,
        ),
      ],
      source,
    }),
  }),
);

/** Limits after sampling: the keys of `samples: keeps:` in settings. */
export const keepsTopics: readonly Topic[] = Object.entries(sampleCare.keeps).map(
  ([name, { from, into, tests, time, limit, after, source }]) => {
    const ships = limit === undefined ? time : `${transportLimits[limit]?.value} h`;
    return {
      kind: "sample limit",
      name,
      title: `How long a sample is good: ${testNames(tests)}`,
      aliases: [],
      explain: () => ({
        sections: [
          ...section(null, [
            `${ships} after it was taken${from === undefined ? "" : `, of ${listing(from.map(materialTitle))}`}, in ${containerNames(into)}.`,
          ]),
          ...section("Then", [`${capital(after)}.`]),
          ...yamlSection("Another limit, in carcase.yaml, in hours", `samples: {keeps: {${name}: 24}}`),
        ],
        source,
      }),
    };
  },
);

/** What a container needs on the way. */
export const careOf = (into: string): string[] => {
  const care = sampleCare.containers[into];
  return care === undefined ? [] : [`${capital(care.keep)}. Source: ${sourceLine(sampleCare.source)}.`];
};
