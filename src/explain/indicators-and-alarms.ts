/** Indicators and alarm patterns: questions asked of what was recorded. */
import { type AlarmPattern, alarmPatterns, type Indicator, indicators } from "../knowledge/index.ts";
import { section, type Topic } from "./explanation.ts";

export const indicatorTopics: readonly Topic[] = [...indicators].map(([name, indicator]) => ({
  kind: "indicator",
  name,
  title: indicator.title,
  aliases: [],
  explain: () => ({
    sections: section("Yes when", [question(indicator)]),
    source: indicator.source ?? null,
  }),
}));

function question({ score, finding }: Indicator): string {
  if (score !== undefined)
    return `the score of ${score.scale} is ${score.at_least === undefined ? `above ${score.above}` : `${score.at_least} or more`}. A pig without that score is not counted.`;
  if (finding === undefined) return "it is recorded so.";
  const { organ, process } = finding;
  return `${process === undefined ? "any finding" : process.join(" or ")} is recorded on ${organ}. A pig in which the organ was not examined is not counted.`;
}

const levels: Record<AlarmPattern["level"], string> = {
  stop: "Stop cutting and call the competent veterinary authority.",
  call: "Finish nothing more and call the competent veterinary authority.",
  exclude: "Call, and have the disease excluded before samples leave.",
};

export const alarmTopics: readonly Topic[] = alarmPatterns.map((alarm) => ({
  kind: "alarm",
  name: alarm.id,
  title: alarm.title,
  aliases: alarm.diseases,
  explain: () => ({
    sections: [
      ...section(null, [
        levels[alarm.level],
        ...(alarm.do_not_open ? ["The carcass is not opened, or closed at once."] : []),
        ...(alarm.category_a ? ["Samples travel as category A in any form."] : []),
        alarm.fires === "always"
          ? "It fires everywhere, and no setting silences it."
          : "It fires only where the settings name it under notifiable.",
        alarm.scope === "case" ? "Seen in one pig." : "Seen over the pigs of a visit.",
      ]),
      ...section("What it may be", alarm.diseases),
      ...section("What must be excluded, and by whom", [alarm.exclude]),
      ...section(
        "What looks like it",
        alarm.look_alikes.map(
          ({ name, apart, separated_by: by }) =>
            `${name}: ${apart} (${by === "record" ? "the findings can tell them apart" : "only tests can tell them apart"})`,
        ),
      ),
      ...section("Lifted by", ["a dated authority entry in the case or visit, and by nothing else."]),
    ],
    source: alarm.source,
  }),
}));
