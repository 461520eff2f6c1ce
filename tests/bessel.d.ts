/** The part of the `bessel` package that the tests use; the package ships no types. */
declare module 'bessel' {
  export function besselj(x: number, order: number): number;
  export function bessely(x: number, order: number): number;
  export function besseli(x: number, order: number): number;
  export function besselk(x: number, order: number): number;
}
