/** The part of jstat the comparison tests use. */
declare module "jstat" {
  interface Library {
    beta: {
      inv(p: number, alpha: number, beta: number): number;
      cdf(x: number, alpha: number, beta: number): number;
    };
    hypgeom: { cdf(x: number, population: number, affected: number, drawn: number): number };
    normal: { inv(p: number, mean: number, deviation: number): number };
  }
  const library: { jStat: Library };
  export default library;
  export const jStat: Library;
}
