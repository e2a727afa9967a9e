// Reference methods that estimate: distributions, intervals, agreement.
// Each takes the input of a row and returns an output with the keys of that row.

const binomial =
  (s, method) =>
  ({ x, n, conf }) => {
    const { lower, upper } = s.binomialInterval(x, n, { level: conf, method });
    return { lower, upper };
  };

const distributions = (s) => ({
  "beta-tails": ({ x, a, b }) => s.regularisedBeta(x, a, b),
  "beta-quantile": ({ probability, a, b, tail }) => ({ x: s.betaQuantile(probability, a, b, tail) }),
  "gamma-tails": ({ a, x }) => s.regularisedGamma(a, x),
  "t-tails": ({ df, t }) => ({ twoSided: s.studentTTwoSided(t, df) }),
  "f-tails": ({ f, ...degrees }) => ({ lower: s.fCdf(f, degrees), upper: s.fCdf(f, degrees, "upper") }),
  "normal-cdf": ({ x }) => ({ lower: s.normalCdf(x), upper: s.normalCdf(x, "upper") }),
  "normal-quantile": ({ probability, tail }) => ({ z: s.normalQuantile(probability, tail) }),
  hypergeometric: ({ x, ...sample }) => ({
    probability: s.hypergeometricProbability(x, sample),
    atMost: s.hypergeometricAtMost(x, sample),
    atLeast: s.hypergeometricAtLeast(x, sample),
  }),
  summary: ({ values }) => s.summarise(values),
});

const proportions = (s) => ({
  "clopper-pearson": binomial(s, "clopper-pearson"),
  "mid-p": binomial(s, "mid-p"),
  blaker: binomial(s, "blaker"),
  wilson: binomial(s, "wilson"),
  // The library gives the limits as they are used; the raw ones of the rows are quantiles or a formula.
  jeffreys: ({ x, n, conf }) => ({
    ...binomial(s, "jeffreys")({ x, n, conf }),
    rawLower: s.betaQuantile((1 - conf) / 2, x + 0.5, n - x + 0.5),
    rawUpper: s.betaQuantile((1 - conf) / 2, x + 0.5, n - x + 0.5, "upper"),
  }),
  "agresti-coull": ({ x, n, conf }) => {
    const z = s.normalQuantile((1 - conf) / 2, "upper");
    const total = n + z * z;
    const centre = (x + (z * z) / 2) / total;
    const margin = z * Math.sqrt((centre * (1 - centre)) / total);
    const limits = binomial(s, "agresti-coull")({ x, n, conf });
    return { ...limits, rawLower: centre - margin, rawUpper: centre + margin };
  },
  "one-sided-upper": ({ x, n, conf }) => ({ upper: s.oneSidedUpper(x, n, conf) }),
  "hypergeometric-ci": ({ x, n, N, conf }) => {
    const { lowerCount, upperCount, lower, upper } = s.finiteInterval(x, n, N, { level: conf });
    return { lowerD: lowerCount, upperD: upperCount, lower, upper };
  },
  "zero-upper-finite": ({ n, N, conf }) => {
    const { upperCount, upper } = s.zeroUpperFinite(n, N, conf);
    return { upperD: upperCount, upper };
  },
  "cluster-prevalence": ({ clusters, conf }) => {
    const counts = clusters.map(([affected, examined]) => ({ affected, examined }));
    const got = s.clusterPrevalence(counts, { level: conf });
    return {
      p: got.proportion,
      stdErr: got.standardError,
      df: got.clusters - 1,
      deff: got.designEffect,
      nEff: got.effectiveSize,
      nEffDf: got.adjustedSize,
      nEffDfCapped: Math.min(got.adjustedSize, got.examined),
      lower: got.lower,
      upper: got.upper,
      uncappedLower: got.uncapped.lower,
      uncappedUpper: got.uncapped.upper,
      waldTLower: got.waldT.lower,
      waldTUpper: got.waldT.upper,
      anovaIcc: got.icc,
      n0: got.averageSize,
    };
  },
  "rogan-gladen": ({ x, n, se, sp, conf }) => {
    const accuracy = { sensitivity: se, specificity: sp };
    const by = (method) => s.truePrevalence(x, n, accuracy, { level: conf, method });
    const { apparent, unclipped, prevalence, standardError, ...wald } = by("wald");
    const [exact, wilson, blaker] = ["clopper-pearson", "wilson", "blaker"].map(by);
    return {
      apparent,
      rawTrue: unclipped,
      true: prevalence,
      stdErr: standardError,
      waldLower: wald.lower,
      waldUpper: wald.upper,
      exactLower: exact.lower,
      exactUpper: exact.upper,
      wilsonLower: wilson.lower,
      wilsonUpper: wilson.upper,
      blakerLower: blaker.lower,
      blakerUpper: blaker.upper,
    };
  },
  "lang-reiczigel": ({ x, n, xSe, nSe, xSp, nSp, conf }) => {
    const study = { truePositive: xSe, affected: nSe, trueNegative: xSp, unaffected: nSp };
    const got = s.langReiczigelInterval(x, n, study, { level: conf });
    const { adjusted, shift, standardError, lower, upper } = got;
    return { shifted: adjusted, dP: shift, stdErr: standardError, lower, upper };
  },
});

const values = (s) => ({
  "t-mean": ({ values: given, conf }) => {
    const { mean, standardError, lower, upper } = s.meanInterval(given, { level: conf });
    return { mean, stdErr: standardError, lower, upper };
  },
});

const agreement = (s) => ({
  kappa: ({ table, conf }) => {
    const by = (weights) => {
      const got = s.cohenKappa(table, { level: conf, weights });
      return {
        observed: got.observed,
        expected: got.expected,
        kappa: got.kappa,
        stdErr: got.standardError,
        lower: got.lower,
        upper: got.upper,
      };
    };
    const [unweighted, linear, quadratic] = ["unweighted", "linear", "quadratic"].map(by);
    const { observed: observedAgreement, expected: expectedAgreement } = unweighted;
    return { observedAgreement, expectedAgreement, unweighted, linear, quadratic };
  },
  icc: ({ ratings, conf }) => {
    const got = s.intraclassCorrelations(ratings, { level: conf });
    const { subjects, readers, residual } = got.meanSquares;
    return {
      BMS: subjects,
      JMS: readers,
      EMS: residual,
      icc21: got.agreement.icc,
      icc31: got.consistency.icc,
      icc2k: got.agreementMean.icc,
      icc3k: got.consistencyMean.icc,
      icc21Lower: got.agreement.lower,
      icc21Upper: got.agreement.upper,
    };
  },
});

/** @param s the library, `carcase/statistics` built or its source. */
export const estimates = (s) => ({ ...distributions(s), ...proportions(s), ...values(s), ...agreement(s) });
