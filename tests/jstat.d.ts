/** The part of the statistics library that serves as second opinion; it brings no types of its own. */
declare module 'jstat' {
  export const jStat: {
    studentt: { cdf(x: number, df: number): number; inv(p: number, df: number): number };
    chisquare: { cdf(x: number, df: number): number };
    centralF: { cdf(x: number, above: number, below: number): number };
  };
  const jstat: { jStat: typeof jStat };
  export default jstat;
}
