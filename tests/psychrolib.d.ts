/** The part of the `psychrolib` package that the tests use; the package ships no types. */
declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    SetUnitSystem(system: number): void;
    /** Saturation pressure [Pa] at t [degC]. */
    GetSatVapPres(t: number): number;
    /** Humidity ratio [-] from t [degC], relative humidity [0..1], p [Pa]. */
    GetHumRatioFromRelHum(t: number, relativeHumidity: number, p: number): number;
    /** Thermodynamic wet bulb [degC] from t [degC], relative humidity [0..1], p [Pa]. */
    GetTWetBulbFromRelHum(t: number, relativeHumidity: number, p: number): number;
    /** Density [kg/m^3] from t [degC], humidity ratio [-], p [Pa]. */
    GetMoistAirDensity(t: number, ratio: number, p: number): number;
  };
  export default psychrolib;
}
