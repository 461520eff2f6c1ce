/**
 * The sweep over the cells of one duct in AssemblyScript, two cells at a time in f64x2 lanes: what
 * sim/scheme (slopes, predict, update), sim/flux/hllc.ts and sim/gas/gas.ts do for the van Leer
 * limiter and the HLLC flux, operation by operation in the same order, so that results are the same
 * to the last bit (tests/consistency/kernel.test.ts). The equations and their sources stand there.
 *
 * An odd number of cells ends in a pair that overlaps the one before it, or, where a cell must be
 * touched once only, in a cell that fills both lanes. Built by `npm run kernel` into ../bytes.ts.
 */
export { advance, wallHeat } from './advance';
export { useGas } from './gas';
export { predict } from './predict';
