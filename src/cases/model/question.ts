/** The one question of a visit, named before its result: for what herd and compare tell first. */
import type { VisitFile } from "../../generated/visit.types.ts";
import type { Settings } from "../settings/settings.ts";
import { unknownName } from "../settings/settings-faults.ts";
import type { VisitContext } from "./model.ts";
import type { Path } from "./path.ts";

/** What was asked of a visit before its pigs were opened. */
export interface VisitQuestion {
  /** Id of an indicator that the settings of the visit have. */
  readonly indicator: string;
  /** Against the pigs of the visit before; undefined when the question is how common it is. */
  readonly direction: "fewer" | "more" | "either" | undefined;
}

/** Undefined where a visit asks nothing, in words alone, or about an indicator that does not exist. */
export function questionOf(visit: VisitContext | undefined): VisitQuestion | undefined {
  const asked = visit?.record.question;
  if (visit === undefined || typeof asked !== "object") return undefined;
  const { indicator, direction } = asked;
  return indicator !== undefined && visit.settings.indicators.has(indicator)
    ? { indicator, direction }
    : undefined;
}

/** The words of the question, and where they stand. */
export function questionText({ question }: Pick<VisitFile, "question">): {
  readonly text: string | undefined;
  readonly path: Path;
} {
  return typeof question === "object"
    ? { text: question.text, path: ["question", "text"] }
    : { text: question, path: ["question"] };
}

/** What is wrong with a question that fits the schema. */
export function questionFaults(
  { question }: VisitFile,
  { indicators }: Settings,
): { readonly path: Path; readonly message: string }[] {
  if (typeof question !== "object" || question.indicator === undefined || indicators.has(question.indicator))
    return [];
  const path = ["question", "indicator"];
  return [
    {
      path,
      message: `${path.join(".")}: ${unknownName(question.indicator, [...indicators.keys()], "indicator")}`,
    },
  ];
}
