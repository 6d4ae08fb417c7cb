// The one function used of a package that ships no types.
declare module 'jstat' {
  const jstat: {
    readonly jStat: { readonly studentt: { inv(p: number, degreesOfFreedom: number): number } };
  };
  export default jstat;
}
