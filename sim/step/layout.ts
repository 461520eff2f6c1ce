/**
 * Where everything stands in memory. A plan (engine/plan.ts) is laid into three arrays: N whole
 * numbers (what joins what), K reals that all lanes share (geometry, gas), X reals of a lane (state).
 *
 * A duct is a line of cells + 2 slots of ROWS places in X: cell i in slot i + 1, the state found at the two
 * end faces in the first slot and the last; the numbers of face i in slot i. In K it is a line of slots of
 * K_ROWS places: cell i, and the face before it, in slot i.
 */
import type { I } from './lanes.ts';

// N: the head of a plan.
export const DUCTS: I = 0; // how many, and where the list of their records starts
export const DUCTS_AT: I = 1;
export const NODES: I = 2;
export const NODES_AT: I = 3;
export const VOLUMES: I = 4;
export const VOLUMES_AT: I = 5;
export const ITERATIONS: I = 6; // Newton steps of a node in a time step
export const ROUGH_FLUX: I = 7; // 1: Rusanov's flux in place of HLLC
export const TAPS: I = 8;
export const TAPS_AT: I = 9;
export const N_HEAD: I = 10;

// K: the head of a plan.
export const COURANT: I = 0;
export const THETA: I = 1; // slope limiter: 1 minmod to 2 monotonised central
export const R_AIR: I = 2; // gas constants: air, and what products and vapour differ from it [J/kg K]
export const R_BURNED: I = 3;
export const R_FUEL: I = 4;
export const GAS_LOW: I = 5; // polynomials below 1000 K: 11 numbers a component (gas.ts)
export const GAS_HIGH: I = 38; // and above
export const PIPE_HEAT: I = 71; // heat at the walls of ducts over the correlation's [-]
export const K_HEAD: I = 72;

// X: the head of a lane.
export const DT: I = 0; // length of the step [s]
export const CRANK_MIDDLE: I = 1; // crank angle at half time [deg], 0 to 720
export const CRANK_STEP: I = 2; // how far the crank turns in the step [deg]
export const CRANK: I = 3; // crank angle now [deg]
export const CRANK_LEFT: I = 4; // how far to go to the next event [deg]
export const CRANK_RATE: I = 5; // [deg/s]
export const TIME: I = 6; // [s]
export const X_HEAD: I = 8;

// N: a duct's record.
export const D_CELLS: I = 0;
export const D_X: I = 1; // its first slot in X
export const D_K: I = 2; // its first slot in K
export const D_TAPER: I = 3; // place in N of a flag a cell: 1 where areas change
export const D_WALL: I = 4; // 1: rubs and gives heat
export const D_SUMS: I = 5; // place in X of its sums
export const D_DX: I = 6; // place in K of its cell length [m] and one over it
export const D_THIN: I = 7; // place in K of what a thin line's wall does: drag, warming [1/s], turbulent share [-]; -1: a pipe
export const D_SIZE: I = 8;

// X: a duct's sums.
export const D_FASTEST: I = 0; // greatest |u| + c [m/s]
export const D_HEAT: I = 1; // heat taken from the wall since the last reset [J]
export const D_VAPOUR: I = 2; // above 0 once fuel vapour has been in it: the most so far [-]
export const D_SUMS_SIZE: I = 3;

// A slot in X. Cells, conserved: [kg/m3], [kg/m2 s], [J/m3], [kg/m3], [kg/m3].
export const RHO: I = 0;
export const MOMENTUM: I = 1;
export const ENERGY: I = 2;
export const RHO_BURNED: I = 3;
export const RHO_FUEL: I = 4;
// Cells, primitive: u [m/s], p [Pa], fractions [-], T [K], gamma [-], 1/rho, e [J/kg], cv/R [-].
export const U: I = 5;
export const P: I = 6;
export const BURNED: I = 7;
export const FUEL: I = 8;
export const T: I = 9;
export const GAMMA: I = 10;
export const PER_RHO: I = 11;
export const E: I = 12;
export const CV_R: I = 13;
export const E_BURNED: I = 14; // what burned products and vapour add to e at given p / rho [J/kg]
export const E_FUEL: I = 15;
export const PER_R: I = 16;
export const CP: I = 17; // [J/kg K]
export const C: I = 18; // speed of sound [m/s]
export const RUB: I = 19; // Fanning factor over diameter [1/m]
// Faces, the side of falling x, then of rising x: rho, u, p, e, burned, fuel.
export const LEFT: I = 20;
export const RIGHT: I = 26;
// Faces, fluxes per area: mass, momentum, energy, burned, fuel.
export const FLUX: I = 32;
// Cells at half time: what the wall pushes [Pa], [N/m3] and heats [W/m3] with.
export const TOTAL_PRESSURE: I = 37;
export const WALL_FORCE: I = 38;
export const WALL_HEAT: I = 39;
// Cells: share of the heat between gas and wall that a metre of gas on its way gives up [1/m].
export const STIR: I = 40;
export const ROWS: I = 41;

// A slot in K.
export const FACE_AREA: I = 0; // [m2]
export const PER_VOLUME: I = 1; // [1/m3]
export const LOW_RATIO: I = 2; // the neighbour's area over the cell's own [-]
export const HIGH_RATIO: I = 3;
export const TO_LOW: I = 4; // the cell's area over its faces' [-]
export const TO_HIGH: I = 5;
export const DIAMETER: I = 6; // [m]
export const PER_DIAMETER: I = 7;
export const MEAN_AREA: I = 8; // [m2]
export const ROUGH_TERM: I = 9; // (eps / 3.7 D)^1.11 [-]
export const WALL_TEMPERATURE: I = 10; // [K], 0: adiabatic
export const LOSS: I = 11; // heads per length [1/m]
export const VOLUME: I = 12; // [m3]
export const K_ROWS: I = 13;

// N: an end's record.
export const E_X: I = 0; // its lane slots
export const E_K: I = 1; // its area [m2], one over it
export const E_FACE: I = 2; // slot in X of its face; -1: the end of no duct
export const E_GHOST: I = 3; // slot beyond the end
export const E_CELL: I = 4; // slot of the cell at the end
export const E_SIDE: I = 5; // first place in a slot of the gas that arrives: LEFT or RIGHT
export const E_SUMS: I = 6; // place in X of its duct's sums

// X: an end's slots. Gas that arrives, v positive out of the duct.
export const A_RHO: I = 0;
export const A_V: I = 1;
export const A_P: I = 2;
export const A_C: I = 3;
export const A_GAMMA: I = 4;
export const A_BURNED: I = 5;
export const A_FUEL: I = 6;
export const A_E: I = 7;
export const A_SIZE: I = 8;
// What crosses, positive out of the duct [kg/s], [W].
export const F_MASS: I = 8;
export const F_ENERGY: I = 9;
export const F_BURNED: I = 10;
export const F_FUEL: I = 11;
// Scratch of a joint.
export const W_V: I = 12;
export const W_RHO: I = 13;
export const W_FALL: I = 14; // how much its velocity falls as the pressure rises [m/s Pa]
// Sums since the last reset: out of the duct, into it, vapour out less in [kg], pressure by time [Pa s].
export const SUM_OUT: I = 15;
export const SUM_IN: I = 16;
export const SUM_FUEL: I = 17;
export const SUM_PRESSURE: I = 18;
export const END_SLOTS: I = 19; // an echo has two more: mass [kg] and energy [J] given since the last reset

// N: a node's record: kind, number of ends, their records, then what its kind needs.
export const KIND: I = 0;
export const COUNT: I = 1;
export const FIRST_END: I = 2;
export const CLOSED: I = 0;
export const RESERVOIR: I = 1; // reservoir slots in X, shares in K, table in K or -1, phase in K, roots in X
export const CONSTRICTION: I = 2; // slots in X, table of growth in K or -1
export const JUNCTION: I = 3; // root in X
export const COLLECTOR: I = 4; // root in X, record in X, delays in K, how many echoes
export const NON_REFLECTING: I = 5; // reservoir slots in X

export const MOUTH: I = 6; // reservoir slots in X, own slots in X, constants in K

// X: slots of a mouth: pressure above the still air's [Pa], velocity of its inertance [m/s], roots out and in.
export const M_P: I = 0;
export const M_U: I = 1;
export const M_ROOT: I = 2;
export const M_SIZE: I = 4;
// K: its inertance rho l [kg/m2], one over its resistance [m/Pa s], compliance [m/Pa], share of the entry [-].
export const M_INERTANCE: I = 0;
export const M_LEAK: I = 1;
export const M_COMPLIANCE: I = 2;
export const M_SHARE: I = 3;

// X: slots of a constriction, there and back: throat areas of slow flow [m2], roots, densities behind,
// temperature of the expansion over stagnation [-].
export const T_AREA: I = 0;
export const T_ROOT: I = 2;
export const T_DENSITY: I = 4;
export const T_LEVEL: I = 6;
export const T_SIZE: I = 8;

// X: gas at rest on the far side of a boundary, and what it got since the last reset [kg], [J].
export const Q_P: I = 0;
export const Q_RT: I = 1;
export const Q_GAMMA: I = 2;
export const Q_H: I = 3;
export const Q_BURNED: I = 4;
export const Q_FUEL: I = 5;
export const G_MASS: I = 6;
export const G_ENERGY: I = 7;
export const G_BURNED: I = 8;
export const G_FUEL: I = 9;
export const G_OPENING: I = 10; // area of the ducts open to it in this step [m2]
export const AIR_SIZE: I = 11;
// A volume besides: contents [kg], [J], last step's rates, size [m3], T [K].
export const V_OPEN: I = 11;
export const V_MASS: I = 12;
export const V_ENERGY: I = 13;
export const V_BURNED: I = 14;
export const V_FUEL: I = 15;
export const V_RATE: I = 16; // four
export const V_SIZE: I = 20;
export const V_T: I = 21;
export const VOLUME_SLOTS: I = 22;
// A cylinder besides: ledger, state at closing, mean piston speed, burn, crevices.
export const C_WORK: I = 22; // ledger [J], [kg]
export const C_WALL: I = 23;
export const C_BURN: I = 24;
export const C_FUEL_MASS: I = 25;
export const C_FUEL_ENERGY: I = 26;
export const C_BLOWN: I = 27; // lost past the rings: [kg], [J]
export const C_AIR_SHARE: I = 29; // share of the fuel that finds air [-]
export const C_CLOSE_P: I = 30;
export const C_CLOSE_T: I = 31;
export const C_CLOSE_V: I = 32;
export const C_PISTON: I = 33; // mean piston speed [m/s]
export const C_BURN_FROM: I = 34; // its charge's burn: start [deg], -360 to 360
export const C_BURN_PER: I = 35; // and one over its length [1/deg], 0: motored
export const C_HELD: I = 36; // what crevices hold: all, burned, fuel [kg]
export const CYLINDER_SLOTS: I = 39;

// N: a volume's record.
export const VOL_X: I = 0;
export const VOL_K: I = 1; // a cylinder's constants, -1: a plain volume
export const VOL_SIZE: I = 2;

// N: a tapping's record: its slots in X, the slot of its cell in X, one over that cell's volume in K, sums of its duct.
export const TAP_X: I = 0;
export const TAP_CELL: I = 1;
export const TAP_K: I = 2;
export const TAP_SUMS: I = 3;
export const TAP_SIZE: I = 4;

// K: a cylinder's constants.
export const C_CRANK: I = 0; // crank radius [m]
export const C_ROD: I = 1; // rod length [m]
export const C_AREA: I = 2; // piston area [m2]
export const C_CLEARANCE: I = 3; // [m3]
export const C_PHASE: I = 4; // its firing behind the first's [deg]
export const C_WALL_T: I = 5; // [K], 0: adiabatic
export const C_LINER: I = 6; // pi B / area: liner per volume [1/m]
export const C_WOSCHNI: I = 7;
export const C_SWEPT: I = 8; // [m3]
export const C_SHUT_FROM: I = 9; // valves shut from here [deg]
export const C_SHUT_SPAN: I = 10; // for so long [deg]
export const C_FUEL_HEAT: I = 11; // [J/kg]
export const C_CREVICE: I = 12; // volume of crevices over wall temperature [m3/K]
export const C_LEAK: I = 13; // area past the rings by the coefficient of choked flow [m2]
export const C_CRANKCASE_P: I = 14; // [Pa]

// A joint's record of what one pipe sent into it over the last cycle.
export const BINS: I = 720; // a degree each
export const REC_LAST: I = 0; // A_SIZE numbers noted last
export const REC_AT: I = 8; // where that was, in bins; negative: nowhere yet
export const REC_TURNS: I = 9; // cycles noted
export const REC_BINS: I = 10; // BINS x A_SIZE
export const REC_SIZE: I = 5778;
