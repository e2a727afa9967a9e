/** The part of jstat the comparison tests use. */
declare module "jstat" {
  interface Library {
    beta: {
      inv(p: number, alpha: number, beta: number): number;
      cdf(x: number, alpha: number, beta: number): number;
    };
    centralF: { cdf(x: number, numerator: number, denominator: number): number };
    chisquare: { cdf(x: number, df: number): number; inv(p: number, df: number): number };
    hypgeom: { cdf(x: number, population: number, affected: number, drawn: number): number };
    normal: { inv(p: number, mean: number, deviation: number): number };
    studentt: { cdf(x: number, df: number): number; inv(p: number, df: number): number };
  }
  const library: { jStat: Library };
  export default library;
  export const jStat: Library;
}
