/** sim/step for f64x2 lanes, built by `npm run kernel`; not to be edited. */
export const BYTES =
  'AGFzbQEAAAACDwEDZW52Bm1lbW9yeQIAAAcKAQZtZW1vcnkCAA==';
