/**
 * Where the published values come from, each named once. How the value was come by is said in
 * brackets: as printed, as a public library transcribes it, computed from the closed form named, or
 * from memory. What has none is marked 'common practice, no source'.
 */
export const SOURCES = {
  sod: 'Sod 1978, J. Comput. Phys. 27:1 (star values computed from the closed form; initial data from memory)',
  toro: 'Toro 2009, Riemann Solvers and Numerical Methods for Fluid Dynamics, tables 4.1-4.3 and ch. 6 (star values computed from the closed form; initial data from memory)',
  toroPrinted:
    'Toro 2009, Riemann Solvers and Numerical Methods for Fluid Dynamics, table 4.3 (from memory)',
  naca1135: 'NACA Report 1135, 1953, tables I-II (computed from the closed form)',
  anderson:
    'Anderson, Computational Fluid Dynamics, ch. 7 (numbers computed from the closed form; geometry from memory)',
  fanno:
    'Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1, ch. 6 (computed from the closed form)',
  rayleigh:
    'Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1, ch. 7 (computed from the closed form)',
  colebrook: 'Colebrook 1939, J. Inst. Civ. Eng. 11:133 (as computed by the library fluids)',
  riemann:
    'Riemann 1860; Blackstock, Fundamentals of Physical Acoustics (computed; formula from memory)',
  cone: 'Fletcher & Rossing, The Physics of Musical Instruments, ch. 8 (computed; formula from memory)',
  levineSchwinger:
    'Levine & Schwinger 1948, Phys. Rev. 73:383 (their integrals computed by two quadratures)',
  nomura: 'Nomura et al. 1960, J. Phys. Soc. Japan 15:510 (from memory)',
  norrisSheng: 'Norris & Sheng 1989, J. Sound Vib. 135:85 (from memory)',
  quarterWave:
    "closed-open pipe f = c / 4L' with the end corrections of Levine & Schwinger 1948 and Nomura et al. 1960 (computed)",
  travel: 'sound needs L / c (computed)',
  helmholtz: "Rayleigh, The Theory of Sound, sec. 303: f = (c / 2 pi) sqrt(S / V L') (computed)",
  idelchikRounded:
    'Idelchik, Handbook of Hydraulic Resistance, diagram 3-3; Roberson & Crowe, Engineering Fluid Mechanics, 2nd ed. (as printed)',
  idelchikProjecting:
    'Idelchik, Handbook of Hydraulic Resistance, diagram 3-1 (as in the library fluids)',
  crane: 'Crane TP-410, p. A-29 (as in the library fluids)',
  miller: 'Miller 1990, Internal Flow Systems (as in the library fluids)',
  rennels: 'Rennels & Hudson 2012, Pipe Flow (as in the library fluids)',
  borda: 'Borda: contraction 0.5 of a thin projecting pipe by momentum (computed)',
  bernoulli: 'Bernoulli with loss, Cd = 1 / sqrt(1 + K) (computed)',
  hoods: 'Idelchik, Handbook of Hydraulic Resistance, intake hoods before a wall (from memory)',
  nozzleFlow:
    'isentropic nozzle, Heywood 1988, app. C, eqs. C.8-C.9 (computed from the closed form)',
  bench: 'flow bench at 28 inches of water, isentropic nozzle; sqrt(dp) for slow flow (computed)',
  taylor:
    'Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 1, ch. 6; Livengood & Stanitz, NACA TN-915 (knee from memory)',
  engelman: 'Engelman 1973, ASME 73-WA/DGP-2 (computed; formula from memory)',
  helmholtzPair:
    'Rayleigh, The Theory of Sound, secs. 303-308: two resonators in a row, each air plug between stiff volumes (computed)',
  woschni: 'Woschni 1967, SAE 670931 (computed; formula from memory)',
  wiebe: 'Wiebe, as in Heywood 1988, eq. 9.30 (computed; constants from memory)',
  adiabatic: 'isentropic compression p V^gamma = const (computed)',
  brunt: 'Brunt et al. 1998, SAE 981052 (formula from memory)',
  janaf: 'NIST-JANAF Thermochemical Tables 1998 (as in the library chemicals)',
  janafMemory: 'NIST-JANAF Thermochemical Tables 1998 (from memory)',
  nasa: 'NASA seven-coefficient polynomials, air.yaml and gri30.yaml of Cantera (computed)',
  heywoodBurned:
    'frozen products of iso-octane at stoichiometric mixture from the NASA polynomials (computed)',
  standardAtmosphere:
    'U.S. Standard Atmosphere 1976, NOAA-S/T 76-1562 (as in the library fluids, and computed)',
  cipm: 'Picard et al. 2008, Metrologia 45:149, CIPM-2007 (computed; constants from memory)',
  saeJ1349: 'SAE J1349 as quoted in the trade press (computed)',
  iso1585: 'ISO 1585 / 80/1269/EEC (computed; exponents from memory)',
  din70020: 'DIN 70020 as quoted in the trade press (computed)',
  crc: 'CRC Handbook of Chemistry and Physics (from memory)',
  yaws: 'CRC Handbook of Chemistry and Physics; Yaws (as in the library chemicals)',
  poling:
    'Poling, Prausnitz & O’Connell, The Properties of Gases and Liquids, 5th ed., app. A (as in the library chemicals)',
  atomBalance: 'atom balance with dry air (computed)',
  heatingValues: 'Heywood 1988, table D.4 (from memory)',
  nrel: 'National Renewable Energy Laboratory, OSTI 1242469 (as printed)',
  mixtureCooling: 'first law, hfg(298 K) / (AFR cp air) (computed)',
  dewPoint: 'Antoine equation of Poling et al. at the partial pressure of the vapour (computed)',
  en228: 'EN 228 (from memory)',
  spalding:
    'Spalding 1953, d-squared law for iso-octane at rest, D = 6.0e-6 (T / 298 K)^1.75 m2/s (computed, stated to 20 %)',
  butterfly:
    'Heywood 1988, eq. 7.18, after Harrington & Bolt 1970, SAE 700082 (computed; formula from memory)',
  tubing:
    'Bergh & Tijdeman 1965, NLR-TR F.238; Tijdeman 1975, J. Sound Vib. 39:1: their equations with complex Bessel functions of the library scipy (computed outside this program)',
  tubingPrinted:
    'Bergh & Tijdeman 1965, NLR-TR F.238, figures 9 to 18, curves digitised by others (as printed)',
  tubingCode:
    'Bergh & Tijdeman 1965, NLR-TR F.238, a value told beside a public implementation of their recursion (as printed)',
  tubingLag:
    'Hagen-Poiseuille into a volume; proportions as Bennett 1985, J. Spacecraft Rockets 22:661 (computed from the closed form)',
  springWorksheet:
    'EN 13906-1 and -3 worked through in the worksheets of a spring calculation (numbers as printed there, equations from memory)',
  springFormula: 'EN 13906-3 (computed; formula from memory)',
  springWorkshop: 'workshop form with friction, E d^4 / (10.8 D n) a turn (as printed)',
  springDegrees: 'EN 13906-3 in degrees, E d^4 / (3667 D n) (computed; formula from memory)',
  euler:
    'Euler, friction of a rope: exp(mu theta), as in arXiv:2012.13353, eq. 1 (computed from the closed form)',
  brettschneider:
    'Brettschneider 1979, Bosch Techn. Berichte 6:177 (computed from the equation as a maker of analysers prints it; carbon, hydrogen and oxygen of petrol from memory)',
  brettschneiderPrinted: 'example of a maker of analysers for Brettschneider 1979 (as printed)',
  singerHarley:
    'Brettschneider 1979 with the twelve carbon atoms of Singer & Harley 1998, J. Air Waste Manage. Assoc. 48 (computed)',
  mit261: 'MIT course 2.61, script on rich exhaust gas (as printed)',
  firstOrder: 'first-order lag of 50 ms against a swing once a cycle (computed)',
  crossleyCook:
    'Crossley & Cook 1991, IEE Conf. Control 91, publ. 332, 2:921 (computed from the coefficients that a general-purpose library of models prints)',
  speedDensity:
    'one body a cylinder is balanced to 10 mmHg at 250 mmHg; speed-density slope of Hendricks et al. 1996, SAE 960037, there (computed; slope from memory)',
  airBalance: 'equal fuel, unequal air (computed)',
  pulsatingFlow:
    'square-root error sqrt(1 + (rms/mean)^2), ISO/TR 3313 (computed from the closed form; clause from memory)',
  rectifiedSine:
    'mean of the size of 1 + a sin, (2/pi)(asin(1/a) + sqrt(a^2 - 1)) for a > 1 (computed)',
  hotElement:
    'mean of a power of the flow, linearised: King 1914, Phil. Trans. R. Soc. A 214:373 (law from memory; computed)',
  sonicConductance:
    'ISO 6358-1, m = C rho0 p1 sqrt(T0/T1) when choked (computed; equation from memory)',
  meanValue:
    'Hendricks & Sorenson 1990, SAE 900616; Hendricks et al. 1996, SAE 960037 (computed; formula and its numbers from memory)',
  airMass: 'mass balance of a volume behind a choked hole (computed)',
  shadow: 'shadow of plate and shaft integrated across the bore (computed outside this program)',
  weisbachGate:
    'Weisbach, gate valves and cocks in round pipes, as handbooks print his experiments (from memory)',
  weisbachJet:
    'Weisbach, sudden contraction of a pipe, as handbooks print his experiments (from memory)',
  unwin:
    'Weisbach, as in Unwin, Hydraulics, Encyclopaedia Britannica, 11th ed. 1911, sec. 63: short cylindrical mouthpieces (as printed)',
  doeIdle:
    'U.S. Department of Energy, Fact 861, 2015 (fuel as printed; air computed with petrol of 0.745 kg/l and 14.6:1)',
  mercury: '1 mmHg = 133.32 Pa (computed)',
  plateLever: 'Heywood 1988, eq. 7.18, and a lever of 20 mm (computed; formula from memory)',
  spindt: 'Spindt 1965, SAE 650507 (computed outside this program; formula from memory)',
  weisbachValve:
    'Weisbach, butterfly valves, as handbooks print his experiments (5 to 20, 40 and 60 deg as quoted in print, the rest and the attribution from memory)',
  perry:
    'Perry 1949, Trans. ASME 71:757, as the polynomial of a public library (computed; citation from memory)',
  jobson:
    'Jobson 1955, Proc. IMechE 169:767 (equations derived anew, computed outside this program)',
  weightingA:
    'IEC 61672-1:2013, table of weightings at the exact frequencies 1000 10^(n/10) Hz (from memory)',
  monopole:
    'Pierce, Acoustics, sec. 4-1, with an image in the plane (computed from the closed form)',
  scipy:
    'tests/independent/scipy: discontinuous Galerkin with scipy.integrate.solve_ivp, from the equations (computed outside this program)',
  linear:
    'linear induction cycle of tests/acoustics, idea after Harrison & Stanev 2004, J. Sound Vib. 269:361 (computed)',
} as const satisfies Record<string, string>;

export type SourceName = keyof typeof SOURCES;
