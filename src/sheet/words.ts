/**
 * What the sheet says, in one language. English names stand in the knowledge itself, and so do those of organs in a
 * language that a note knows; other names stand in the messages of their language.
 */
import { type Language, type MessageKey, messages } from "../generated/knowledge/messages.ts";
import { alarmSigns, organTitle, sampleRules } from "../knowledge/index.ts";
import { necropsySteps } from "../knowledge/knife.ts";

export { languages } from "../generated/knowledge/languages.ts";
export type { MessageKey };

export const isLanguage = (name: string): name is Language => Object.hasOwn(messages, name);

/** The English names by kind; a name that is a word of the format is said with spaces. */
const english = {
  materials: (id: string) => sampleRules.materials[id]?.title ?? id,
  steps: (id: string) => necropsySteps.find((step) => step.id === id)?.title ?? id,
  containers: (id: string) => id.replaceAll("-", " "),
  tests: (id: string) => id.replaceAll("-", " "),
  alarm_signs: (id: string) => alarmSigns.get(id)?.asks ?? id,
  diseases: (id: string) => id,
} as const;

type Term = "organs" | keyof typeof english;

export interface Words {
  readonly language: Language;
  /** @param values what stands in for the words in braces */
  say(key: MessageKey, values?: Readonly<Record<string, string | number>>): string;
  name(kind: Term, id: string): string;
  /** The cautions of a step of the necropsy. */
  cautions(step: string): readonly string[];
}

export function wordsIn(language: Language): Words {
  const { say, terms, cautions } = messages[language];
  return {
    language,
    say: (key, values = {}) => say[key].replaceAll(/\{(\w+)\}/g, (_, name: string) => String(values[name])),
    name: (kind, id) =>
      terms[kind]?.[id] ?? (kind === "organs" ? organTitle(id, language) : english[kind](id)),
    cautions: (step) =>
      cautions?.[step] ??
      necropsySteps.find(({ id }) => id === step)?.caution?.map((caution) => caution.say) ??
      [],
  };
}
