/* The built-ins of sim/step/builtins.ts for lanes in C++, for `npm run bench`: WebAssembly or x86-64.
 * F32: four floats in place of two doubles. */
#include <stdint.h>
typedef int32_t I;
typedef uintptr_t usize;
#define INLINE static inline __attribute__((always_inline))
#ifdef F32
typedef float R;
typedef int32_t W;
#define LANES 4
#define MANTISSA 23
#define ROOT_HALF 0x3f3504f3
#define ROUNDER 12582912.0f
#define DOUBLE false
#define SIGN 0x7fffffff
#else
typedef double R;
typedef long long W;
#define LANES 2
#define MANTISSA 52
#define ROOT_HALF 0x3fe6a09e00000000LL
#define ROUNDER 6755399441055744.0
#define DOUBLE true
#define SIGN 0x7fffffffffffffffLL
#endif
typedef R V __attribute__((vector_size(16)));
typedef W B __attribute__((vector_size(16)));

#ifdef __wasm__
#include <wasm_simd128.h>
#define OUTSIDE extern "C" __attribute__((visibility("default")))
#define MEMORY(offset, at) ((offset) + (at))
#ifdef F32
#define DO(name, ...) (V) wasm_f32x4_##name(__VA_ARGS__)
#else
#define DO(name, ...) (V) wasm_f64x2_##name(__VA_ARGS__)
#endif
INLINE V $sqrt(V a) { return DO(sqrt, (v128_t)a); }
INLINE V $abs(V a) { return DO(abs, (v128_t)a); }
INLINE V $min(V a, V b) { return DO(pmin, (v128_t)a, (v128_t)b); }
INLINE V $max(V a, V b) { return DO(pmax, (v128_t)a, (v128_t)b); }
INLINE bool $any(B a) { return wasm_v128_any_true((v128_t)a); }
#else
#include <immintrin.h>
#define OUTSIDE
alignas(16) static char memory[1 << 26];
#define MEMORY(offset, at) (memory + (offset) + (at))
#ifdef F32
#define DO(name, ...) (V) _mm_##name##_ps(__VA_ARGS__)
#define MASK(a) _mm_movemask_ps((__m128)(a))
#else
#define DO(name, ...) (V) _mm_##name##_pd(__VA_ARGS__)
#define MASK(a) _mm_movemask_pd((__m128d)(a))
#endif
INLINE V $sqrt(V a) { return DO(sqrt, a); }
INLINE V $abs(V a) { return (V)((B)a & (B{} + SIGN)); }
INLINE V $min(V a, V b) { return DO(min, b, a); }
INLINE V $max(V a, V b) { return DO(max, b, a); }
INLINE bool $any(B a) { return MASK(a) != 0; }
#endif
#define N_AT(offset, at) (*(I *)MEMORY(offset, at))
#define K_AT(offset, at) (*(R *)MEMORY(offset, at))
#define X_AT(offset, at) (*(V *)MEMORY(offset, at))

INLINE V $k(R x) { return V{} + x; }
INLINE V $add(V a, V b) { return a + b; }
INLINE V $sub(V a, V b) { return a - b; }
INLINE V $mul(V a, V b) { return a * b; }
INLINE V $div(V a, V b) { return a / b; }
INLINE V $neg(V a) { return -a; }
INLINE B $lt(V a, V b) { return (B)(a < b); }
INLINE B $le(V a, V b) { return (B)(a <= b); }
INLINE B $gt(V a, V b) { return (B)(a > b); }
INLINE B $ge(V a, V b) { return (B)(a >= b); }
INLINE B $eq(V a, V b) { return (B)(a == b); }
INLINE B $ne(V a, V b) { return (B)(a != b); }
INLINE B $and(B a, B b) { return a & b; }
INLINE B $or(B a, B b) { return a | b; }
INLINE B $not(B a) { return ~a; }
INLINE V $pick(V a, V b, B where) { return (V)(((B)a & where) | ((B)b & ~where)); }
INLINE B $pick(B a, B b, B where) { return (a & where) | (b & ~where); }
INLINE bool $all(B a) { return !$any(~a); }
INLINE B $truth(bool x) { return B{} - (W)x; }
INLINE R $minR(R a, R b) { return b < a ? b : a; }
INLINE R $maxR(R a, R b) { return a < b ? b : a; }
INLINE R $sqrtR(R a) { return sizeof(R) == 4 ? __builtin_sqrtf(a) : __builtin_sqrt(a); }
INLINE R $absR(R a) { return a < 0 ? -a : a; }
INLINE R $real(I i) { return (R)i; }
INLINE I $truncated(R x) { return (I)x; }

INLINE B $power(V x) { return ((B)x - ROOT_HALF) >> MANTISSA; }
INLINE V $exponent(V x) { return (V)($power(x) + (B)$k(ROUNDER)) - ROUNDER; }
INLINE V $mantissa(V x) { return (V)((B)x - ($power(x) << MANTISSA)); }
INLINE V $rounded(V x) { return (x + ROUNDER) - ROUNDER; }
INLINE V $scaled(V x, V e) { return (V)((B)x + ((B)(e + ROUNDER) << MANTISSA)); }

INLINE V $lookup(I base, V x) {
  V y;
  for (int lane = 0; lane < LANES; lane++) {
    const I n = (I)x[lane];
    const R *at = &K_AT(AT_K, (usize)(base + n) * sizeof(R));
    y[lane] = at[0] + (x[lane] - n) * (at[1] - at[0]);
  }
  return y;
}
INLINE V $lookupLane(I base, I stride, V x) {
  V y;
  for (int lane = 0; lane < LANES; lane++) {
    const I n = (I)x[lane];
    const R *at = (R *)&X_AT(AT_X, (usize)(base + stride * n) * 16) + lane;
    y[lane] = at[0] + (x[lane] - n) * (at[stride * LANES] - at[0]);
  }
  return y;
}
INLINE void $scatterLane(I base, I stride, V at, V value, B where) {
  for (int lane = 0; lane < LANES; lane++)
    if (where[lane]) ((R *)&X_AT(AT_X, (usize)(base + stride * (I)at[lane]) * 16))[lane] = value[lane];
}

/* A name that a step may use and C++ may not. */
#define signed signed_
