// The few functions used of a package that ships no types.
declare module 'jstat' {
  const jstat: {
    readonly jStat: {
      readonly studentt: {
        inv(p: number, degreesOfFreedom: number): number;
        cdf(x: number, degreesOfFreedom: number): number;
      };
      readonly centralF: { cdf(x: number, numerator: number, denominator: number): number };
      readonly chisquare: { inv(p: number, degreesOfFreedom: number): number };
      readonly normal: {
        pdf(x: number, mean: number, sd: number): number;
        cdf(x: number, mean: number, sd: number): number;
        inv(p: number, mean: number, sd: number): number;
      };
      /** The regularized incomplete beta function. */
      ibeta(x: number, a: number, b: number): number;
      ibetainv(p: number, a: number, b: number): number;
      gammaln(x: number): number;
      /** The inverse of a matrix, by rows. */
      inv(matrix: readonly (readonly number[])[]): number[][];
    };
  };
  export default jstat;
}
