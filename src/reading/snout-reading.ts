/** The reading of the snouts, visit by visit. */
import type { Archive } from "../cases/index.ts";
import { hasSigns, snoutFacts } from "./snout-facts.ts";
import { type SnoutStatement, statementsOf } from "./statements.ts";
import type { ToxinTest } from "./toxin-tests.ts";

export interface SnoutReading {
  /** Id of the visit. */
  readonly visit: string;
  readonly farm: string | null;
  /** Pigs whose snout was examined and can be read. */
  readonly snouts: number;
  /** Pigs with a sign of severe loss, of the conchae or on the outside. */
  readonly severe: number;
  /** Highest reading, in ppm; null when none was read. */
  readonly ammonia_ppm: number | null;
  /** Highest reading of total dust, in mg/m3; null when none was read. */
  readonly dust_mg_per_m3: number | null;
  /** Results of tests for the toxin gene that count for these snouts, and of those that are pending. */
  readonly tests: readonly ToxinTest["result"][];
  /** Results that do not count, and why. */
  readonly tests_not_used: readonly { readonly result: ToxinTest["result"]; readonly why: string }[];
  readonly statements: readonly SnoutStatement[];
}

/**
 * What the snouts of each visit are consistent with, what the air readings say, and which test would settle it.
 *
 * Visits in which no snout was examined are left out, unless a test found the toxin gene, and so are cases without a visit:
 * their air and tests are not known.
 * Sources stand beside each statement; limits and texts are in src/knowledge/snout-reading.yaml.
 */
export function snoutReading({ visits, cases }: Pick<Archive, "visits" | "cases">): SnoutReading[] {
  const counted = new Set(cases);
  return visits.flatMap((visit) => {
    const facts = snoutFacts(
      visit,
      visit.cases.filter((one) => counted.has(one)),
    );
    const found = facts.tests.some(({ result }) => result === "positive");
    if (facts.snouts.length === 0 && !found) return [];
    return [
      {
        visit: visit.id,
        farm: visit.farm?.id ?? null,
        snouts: facts.snouts.length,
        severe: facts.snouts.filter(hasSigns).length,
        ammonia_ppm: facts.ammonia ?? null,
        dust_mg_per_m3: facts.dust ?? null,
        tests: facts.tests.flatMap(({ result, unused }) => (unused === undefined ? [result] : [])),
        tests_not_used: facts.tests.flatMap(({ result, unused: why }) =>
          why === undefined ? [] : [{ result, why }],
        ),
        statements: statementsOf(facts),
      },
    ];
  });
}
