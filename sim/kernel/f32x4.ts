/** sim/step for f32x4 lanes, built by `npm run kernel`; not to be edited. */
export const BYTES =
  'AGFzbQEAAAACDwEDZW52Bm1lbW9yeQIAAAcKAQZtZW1vcnkCAA==';
