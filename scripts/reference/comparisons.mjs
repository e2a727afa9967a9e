// Reference methods that compare groups or plan numbers: detection, sample sizes, tests.
// Each takes the input of a row and returns an output with the keys of that row.

const detectFinite =
  (s) =>
  ({ N, D, conf }) => {
    const { n, probability, probabilityBefore, cannonRoe } = s.detectionSampleSize(
      { population: N, affected: D },
      { level: conf },
    );
    return {
      nExact: n,
      probAtN: probability,
      probAtNMinus1: probabilityBefore,
      cannonRoeRaw: cannonRoe,
      cannonRoe: Math.ceil(cannonRoe - 1e-9),
    };
  };

const detectFiniteSe =
  (s) =>
  ({ N, D, se, conf }) => {
    const herd = { population: N, affected: D };
    const { n, probability, most } = s.detectionSampleSize(herd, { sensitivity: se, level: conf });
    return { nExact: n, probAtN: probability, maxProb: most };
  };

const precision =
  (s) =>
  ({ p, precision: halfWidth, conf, N, icc, clusterSize }) => {
    const got = s.precisionFormula({
      proportion: p,
      halfWidth,
      level: conf,
      icc,
      clusterSize,
      ...(N === null ? {} : { population: N }),
    });
    return {
      n0: got.n0,
      deff: got.designEffect,
      nInfinite: got.n,
      nInfiniteDeff: got.nClustered,
      fpcRaw: got.finiteRaw,
      fpc: got.finite,
      fpcCochranRaw: got.finiteCochranRaw,
    };
  };

const groupsOf = ([[a, b], [c, d]]) => ({ x1: a, n1: a + b, x2: c, n2: c + d });

/** @param s the library, `carcase/statistics` built or its source. */
export const comparisons = (s) => ({
  "detect-finite": detectFinite(s),
  "detect-infinite": ({ prev, se, conf }) =>
    s.detectionSampleSizeUnlimited(prev, { sensitivity: se, level: conf }),
  "detect-finite-se": detectFiniteSe(s),
  "herd-sensitivity-imperfect": ({ N, D, n, c, se, sp }) =>
    s.herdAccuracy({ population: N, affected: D }, n, c, { sensitivity: se, specificity: sp }),
  "sample-size-precision": precision(s),
  fisher: ({ table, conf }) => s.fisherExact(groupsOf(table), { level: conf }),
  "risk-difference": ({ x1, n1, x2, n2, conf }) =>
    s.riskDifference({ x1, n1, x2, n2 }, { level: conf, method: "newcombe" }),
  "cochran-armitage": ({ x, n, score }) =>
    s.trendTest(x.map((affected, i) => ({ affected, examined: n[i], score: score[i] }))),
  wilcoxon: ({ a, b }) => {
    const { u, normalP, uncorrectedP } = s.rankSumTest(a, b);
    return { W: u, p: normalP, pNoCorrection: uncorrectedP };
  },
  kruskal: ({ groups }) => {
    const { h, df, p } = s.kruskalWallis(groups);
    return { H: h, df, p };
  },
  "mantel-haenszel": ({ strata, conf }) => s.mantelHaenszel(strata.map(groupsOf), { level: conf }),
});
