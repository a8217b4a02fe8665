/** The part of psychrolib that is used here (MIT; ASHRAE Handbook Fundamentals 2017, chapter 1). IP units. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly IP: number;
    SetUnitSystem(system: number): void;
    GetHumRatioFromTWetBulb(dryBulb: number, wetBulb: number, psia: number): number;
    GetRelHumFromTWetBulb(dryBulb: number, wetBulb: number, psia: number): number;
    GetTDewPointFromHumRatio(dryBulb: number, humidityRatio: number, psia: number): number;
    GetTWetBulbFromRelHum(dryBulb: number, relativeHumidity: number, psia: number): number;
    GetMoistAirEnthalpy(dryBulb: number, humidityRatio: number): number;
    GetMoistAirVolume(dryBulb: number, humidityRatio: number, psia: number): number;
    GetSatVapPres(dryBulb: number): number;
    GetSatHumRatio(dryBulb: number, psia: number): number;
    GetStandardAtmPressure(altitudeFeet: number): number;
  }
  const shared: Psychrometrics;
  export default shared;
}
