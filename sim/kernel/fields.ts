/**
 * What a duct's block of memory holds, row by row, and how the gas table is laid out: read by
 * TypeScript and by the WebAssembly kernel alike. Cell i and face i stand at place i + 2 of a row,
 * the gas beyond both ends at places 1 and n + 2.
 */

// Cells: conserved quantities.
export const RHO = 0;
export const MOMENTUM = 1;
export const ENERGY = 2;
export const RHO_BURNED = 3;
export const RHO_FUEL = 4;
// Cells: what follows from them.
export const U = 5;
export const P = 6;
export const T = 7;
export const GAMMA = 8;
export const R = 9;
export const C = 10;
export const BURNED = 11;
export const FUEL = 12;
// Faces: the state on the side of falling x, and on that of rising x.
export const LEFT_RHO = 13;
export const LEFT_U = 14;
export const LEFT_P = 15;
export const LEFT_E = 16;
export const LEFT_C = 17;
export const LEFT_BURNED = 18;
export const LEFT_FUEL = 19;
export const RIGHT_RHO = 20;
export const RIGHT_U = 21;
export const RIGHT_P = 22;
export const RIGHT_E = 23;
export const RIGHT_C = 24;
export const RIGHT_BURNED = 25;
export const RIGHT_FUEL = 26;
// Faces: fluxes.
export const FLUX_MASS = 27;
export const FLUX_MOMENTUM = 28;
export const FLUX_ENERGY = 29;
export const FLUX_BURNED = 30;
export const FLUX_FUEL = 31;
// Cells: the wall.
export const TOTAL_PRESSURE = 32;
export const WALL_FORCE = 33;
export const WALL_HEAT = 34;
export const FANNING = 35;
export const LOSS_PER_LENGTH = 36;
export const WALL_TEMPERATURE = 37;
// Geometry.
export const LOW_RATIO = 38;
export const HIGH_RATIO = 39;
export const TO_LOW = 40;
export const TO_HIGH = 41;
export const PER_DIAMETER = 42;
export const PER_VOLUME = 43;
export const FACE_AREA = 44;
export const MEAN_AREA = 45;
export const VOLUME = 46;
/** By how much the difference to either neighbour counts: 2 at an end, where a face is half a cell away. */
export const WEIGHT_LOW = 47;
export const WEIGHT_HIGH = 48;
/** Number of rows. */
export const ROWS = 49;

/** Place of cell 0 and of face 0 in a row. */
export const FIRST = 2;

/** Distance of the knots of the gas table [K]. */
export const KNOT = 100;
/** Number of intervals; the last knot lies at 4000 K. */
export const INTERVALS = 40;
/** Numbers per row of the table: e, cv, h of air, then of burned and fuel less those of air. */
export const ROW = 9;
