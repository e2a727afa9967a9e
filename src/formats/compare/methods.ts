/** The methods behind a comparison, each with who says so; only those that were used. */
import type { Compared, Comparison } from "../../compare/index.ts";

const methods = {
  "fisher-exact": [
    "Fisher's exact test 1935, two-sided; odds ratio: conditional maximum likelihood, exact limits (Cornfield 1956*).",
    "Difference: Zou & Donner 2008*, Stat Med 27:1693-1702; risk ratio: Donner & Zou 2012*, Stat Methods Med Res 21:347-359; both join Clopper-Pearson limits of the sides; the difference, away from 0, no nearer than Agresti & Caffo 2000*, Am Stat 54:280-288, by t.",
  ],
  "unit-means": [
    "Treated against control: the mean of each pen or group, each alike, dealt out anew to the arms within strata (Fisher 1935*), all ways counted where they are few, else 9,999 at random; difference within strata: of shares Newcombe 1998, Stat Med 17:873-890, method 10, each arm with its effective number (Korn & Graubard 1998*); of scores Welch 1938*; both with Student's t.",
  ],
  "mann-whitney": [
    "Mann & Whitney 1947*, exact up to 100 pigs; shift: Hodges & Lehmann 1963*, interval Moses 1965*.",
  ],
  "cochran-armitage": [
    "Trend: Cochran 1954*; Armitage 1955, Biometrics 11:375-386; exact: Agresti 1992*, Stat Sci 7:131-153.",
  ],
  cuzick: [
    "Trend of scores: ranks over days, Cuzick 1985*, Stat Med 4:87-90, by permutation: all ways counted where they are few, else 9,999 at random; shift: Hodges & Lehmann 1963*.",
  ],
  "freeman-halton": ["Fisher's exact test of several groups: Freeman & Halton 1951*, Biometrika 38:141-149."],
  "kruskal-wallis": [
    "Kruskal & Wallis 1952*, exact where a side has fewer than five pigs and it can be counted.",
  ],
} as const;

export function compareMethods(made: readonly Comparison[], blocks: readonly Compared[]): string[] {
  const dealt = blocks.map(({ adjustment }) => adjustment).find(({ permutations }) => permutations > 0);
  const tests = new Set(made.flatMap(({ result }) => (result === null ? [] : [result.test])));
  return [
    ...[...tests].flatMap((test) => methods[test]),
    ...rulesUsed(made),
    ...strataMethods(made),
    ...pensMethods(made),
    ...(made.some(dealtAtRandom)
      ? [`Dealt out at random with seed ${blocks[0]?.adjustment.seed ?? 1}.`]
      : []),
    ...(dealt === undefined
      ? []
      : [
          `Several questions: the smallest p of ${dealt.permutations} permutations of the sides within strata, seed ${dealt.seed}, step-down: Westfall & Young 1993*.`,
        ]),
  ];
}

/** Whether a trend or the arms of a trial had too many ways to be counted. */
function dealtAtRandom({ result }: Comparison): boolean {
  if (result === null) return false;
  if (result.test === "unit-means") return !result.exact;
  const own = result.test === "cuzick" ? [result, result.stratified] : [];
  const pens = result.test === "cuzick" || result.test === "cochran-armitage" ? [result.penned] : [];
  return [...own, ...pens].some((one) => one?.exact === false);
}

/** The rules other than Fisher's, which the settings chose. */
function rulesUsed(made: readonly Comparison[]): string[] {
  const used = new Set(made.flatMap(({ result }) => (result?.test === "fisher-exact" ? [result.rule] : [])));
  return [
    ...(used.has("boschloo")
      ? [
          "Test of two shares, chosen in carcase.yaml: Boschloo 1970*, Stat Neerl 24:1-9, two-sided by doubling.",
        ]
      : []),
    ...(used.has("mid-p")
      ? [
          "Test of two shares, chosen in carcase.yaml: mid-p, Lancaster 1961*; not exact, it promises no level.",
        ]
      : []),
  ];
}

function strataMethods(made: readonly Comparison[]): string[] {
  const some = made.flatMap(({ result }) =>
    result !== null && "stratified" in result && result.stratified !== null ? [result.stratified] : [],
  );
  const shares = some.filter((one) => "odds_ratio" in one);
  return [
    ...(shares.some(({ exact }) => exact)
      ? ["Strata: Mantel & Haenszel 1959*; exact p and odds ratio: Gart 1970*; Mehta, Patel & Gray 1985*."]
      : []),
    ...(shares.some(({ exact }) => !exact)
      ? [
          "Large strata: Mantel & Haenszel 1959*, p with the correction of one half, interval without it (Robins, Breslow & Greenland 1986*).",
        ]
      : []),
    ...(some.some((one) => "superiority" in one) ? ["Scores within strata: van Elteren 1960*."] : []),
    ...(some.some((one) => "z" in one) ? ["Trend within strata: Mantel 1963*."] : []),
  ];
}

function pensMethods(made: readonly Comparison[]): string[] {
  const some = made.flatMap(({ result }) =>
    result !== null && "penned" in result && result.penned !== null ? [result.penned] : [],
  );
  return [
    ...(some.some((one) => "effective" in one)
      ? [
          "Pens, shares: counts over the design effect, Rao & Scott 1992*, Biometrics 48:577-585, with Student's t; difference: Newcombe 1998, Stat Med 17:873-890, method 10.",
        ]
      : []),
    ...(some.some((one) => "z" in one)
      ? [
          "Pens, over visits: the mean of each pen, each pen alike, dealt out anew to the visits (Fisher 1935*); slope: least squares, each visit with its own variance, Student's t; limits of shares joined as by Newcombe 1998, Stat Med 17:873-890 (Zou, Huang & Zhang 2009*).",
        ]
      : []),
    ...(some.some((one) => "superiority" in one)
      ? ["Pens, scores: the mean of each pen, common practice."]
      : []),
  ];
}
