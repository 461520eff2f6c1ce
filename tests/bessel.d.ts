/** The part of the `bessel` package that the tests use; the package ships no types. */
declare module 'bessel' {
  const bessel: {
    besselj(x: number, order: number): number;
    bessely(x: number, order: number): number;
    besseli(x: number, order: number): number;
    besselk(x: number, order: number): number;
  };
  export default bessel;
}
