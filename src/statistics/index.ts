/** Statistics of proportions and scores: pure functions of numbers, usable on their own. */
export {
  type AdjustedShares,
  adjustedShares,
  type ClusterEffects,
  type ClusteredShares,
  clusteredShares,
} from "./adjusted-shares.ts";
export { affectedCount, ROUNDINGS, type Rounding } from "./affected-count.ts";
export {
  BINOMIAL_METHODS,
  type BinomialInterval,
  type BinomialIntervalOptions,
  type BinomialMethod,
  binomialInterval,
} from "./binomial-interval.ts";
export {
  type BootstrapInterval,
  type BootstrapMeasure,
  type BootstrapOptions,
  bootstrapInterval,
} from "./bootstrap.ts";
export { boschlooP } from "./boschloo.ts";
export { isLevel, requireLevel } from "./checks.ts";
export { chiSquaredTail } from "./chi-squared.ts";
export {
  type ClusterCount,
  type ClusterPrevalence,
  clusterPrevalence,
  type ProportionLimits,
} from "./cluster-prevalence.ts";
export {
  type DetectionOptions,
  type DetectionSampleSize,
  detectionProbability,
  detectionSampleSize,
  detectionSampleSizeUnlimited,
} from "./detection.ts";
export { type AffectedHerd, cannonRoe } from "./detection-formulas.ts";
export { exactMantelHaenszel } from "./exact-mantel-haenszel.ts";
export { type FDegrees, fCdf, fQuantile } from "./f-distribution.ts";
export { type FiniteInterval, finiteInterval, zeroUpperFinite } from "./finite-interval.ts";
export { type FisherOptions, type FisherTest, fisherExact } from "./fisher.ts";
export {
  fisherPower,
  LARGEST_GROUP,
  largestGroup,
  type MixedPart,
  mixedPower,
  ruleFor,
  SHARES_RULES,
  type SharesRule,
  sharesP,
  type TwoShares,
} from "./fisher-power.ts";
export {
  type ComparisonOptions,
  type ComparisonSampleSize,
  detectableShares,
  fisherSampleSize,
} from "./fisher-sample-size.ts";
export { type SharesTest, sharesTest } from "./freeman-halton.ts";
export {
  type HerdAccuracy,
  type HerdTestSampleSize,
  type HerdTestTargets,
  herdAccuracy,
  herdTestSampleSize,
  type TestAccuracy,
} from "./herd-test.ts";
export {
  type HypergeometricSample,
  hypergeometricAtLeast,
  hypergeometricAtMost,
  hypergeometricProbability,
} from "./hypergeometric.ts";
export { betaQuantile, regularisedBeta } from "./incomplete-beta.ts";
export { regularisedGamma } from "./incomplete-gamma.ts";
export {
  type Icc,
  type IntraclassCorrelations,
  intraclassCorrelations,
  type MeanSquares,
} from "./intraclass-correlation.ts";
export {
  type AgreementLimits,
  cohenKappa,
  type Kappa,
  type KappaOptions,
  type KappaWeights,
} from "./kappa.ts";
export { type KruskalWallisTest, kruskalWallis } from "./kruskal-wallis.ts";
export { type AccuracyStudy, type LangReiczigelInterval, langReiczigelInterval } from "./lang-reiczigel.ts";
export { leastRankP, leastSharesP, leastTrendP } from "./least-p.ts";
export type { Limits } from "./limits.ts";
export { type MantelHaenszel, mantelHaenszel } from "./mantel-haenszel.ts";
export { type MeanInterval, meanInterval } from "./mean-interval.ts";
export { type MedianInterval, medianInterval } from "./median-interval.ts";
export { normalCdf, normalQuantile } from "./normal.ts";
export { type OddsHomogeneity, oddsHomogeneity } from "./odds-homogeneity.ts";
export { oneSidedLower, oneSidedUpper } from "./one-sided.ts";
export type { OrderedGroup } from "./ordered-group.ts";
export { type PercentAgreement, percentAgreement } from "./percent-agreement.ts";
export {
  type PermutedTrend,
  type PermutedTrendOptions,
  type PlacedValues,
  permutedTrend,
  type Slope,
  slopeWithin,
} from "./permuted-trend.ts";
export {
  type PooledSampleSize,
  type Pools,
  pooledDetectionProbability,
  pooledSampleSize,
  pooledSampleSizeUnlimited,
} from "./pooled-detection.ts";
export { type PooledPrevalence, pooledPrevalence } from "./pooled-prevalence.ts";
export { type PrecisionGoal, type PrecisionSampleSize, precisionSampleSize } from "./precision.ts";
export { type PrecisionFormula, type PrecisionQuestion, precisionFormula } from "./precision-formula.ts";
export { type SeededRandom, seededRandom } from "./random.ts";
export { type RankFormula, rankFormula } from "./rank-formula.ts";
export { type RankSumTest, rankSumShows, rankSumTest } from "./rank-sum.ts";
export {
  RISK_DIFFERENCE_METHODS,
  type RiskDifference,
  type RiskDifferenceMethod,
  type RiskDifferenceOptions,
  riskDifference,
} from "./risk-difference.ts";
export { type RiskRatio, type RiskRatioMethod, riskRatio } from "./risk-ratio.ts";
export { hodgesLehmann, type Shift } from "./shift.ts";
export { signTest } from "./sign-test.ts";
export { type Permutable, type PermutationOptions, smallestPAdjusted } from "./smallest-p.ts";
export { amongOthers, holmAdjusted, type Place, type PlaceAmongOthers } from "./standing-out.ts";
export { type StratifiedProportion, type StratumCount, stratifiedProportion } from "./stratified.ts";
export { type StratifiedShares, stratifiedShares } from "./stratified-shares.ts";
export { studentTCdf, studentTQuantile, studentTTwoSided } from "./student-t.ts";
export { type Summary, summarise, type ValueCount } from "./summary.ts";
export { stratifiedTrend, type TrendOptions, type TrendTest, trendTest } from "./trend.ts";
export { type Accuracy, type TruePrevalence, truePrevalence } from "./true-prevalence.ts";
export type { TwoGroups } from "./two-by-two.ts";
export { type RankedStratum, type StratifiedRanks, stratifiedRankSum } from "./van-elteren.ts";
