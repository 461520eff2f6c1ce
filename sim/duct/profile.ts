/**
 * Round ducts as a line of stations: diameter against distance, straight between stations.
 * Volume between two stations is that of a cone frustum, so cell volumes are exact. Source: geometry.
 */

/** One station of a duct. */
export interface Station {
  /** Distance along the centre line [m]. */
  x: number;
  /** Inner diameter [m]. */
  diameter: number;
}

/** Stations in rising x, the first at x = 0. */
export type Profile = readonly Station[];

/** Area of a circle of the given diameter [m^2]. */
export function circleArea(diameter: number): number {
  return (Math.PI / 4) * diameter * diameter;
}

/** Lengths with end diameters, laid end to end; those of zero length are dropped. */
export function profileOf(
  pieces: readonly { length: number; outerDiameter: number; innerDiameter: number }[],
): Station[] {
  const stations: Station[] = [];
  let x = 0;
  for (const piece of pieces) {
    if (piece.length <= 0) continue;
    push(stations, { x, diameter: piece.outerDiameter });
    x += piece.length;
    push(stations, { x, diameter: piece.innerDiameter });
  }
  return stations;
}

/** Total length [m]. */
export function lengthOf(profile: Profile): number {
  return profile.length === 0 ? 0 : profile[profile.length - 1]!.x;
}

/** Diameter at distance x [m]; at a step, the far side's. */
export function diameterAt(profile: Profile, x: number): number {
  const last = profile[profile.length - 1]!;
  if (x >= last.x) return last.diameter;
  let i = 0;
  while (i < profile.length - 2 && profile[i + 1]!.x <= x) i++;
  const a = profile[i]!;
  const b = profile[i + 1]!;
  return a.diameter + ((b.diameter - a.diameter) * (x - a.x)) / (b.x - a.x);
}

/** Volume from the start of the profile to distance x [m^3]. */
export function volumeTo(profile: Profile, x: number): number {
  return sumTo(profile, x, (d1, d2, length) => {
    return (Math.PI / 12) * length * (d1 * d1 + d1 * d2 + d2 * d2);
  });
}

/** Integral of dx / A from the start of the profile to distance x [1/m]. */
export function slendernessTo(profile: Profile, x: number): number {
  return sumTo(profile, x, (d1, d2, length) => ((4 / Math.PI) * length) / (d1 * d2));
}

/** Sum over the pieces between stations up to x of a figure of a cone, from both diameters and length. */
function sumTo(
  profile: Profile,
  x: number,
  cone: (d1: number, d2: number, length: number) => number,
): number {
  let sum = 0;
  for (let i = 0; i + 1 < profile.length && profile[i]!.x < x; i++) {
    const a = profile[i]!;
    const b = profile[i + 1]!;
    if (b.x <= a.x) continue;
    const share = Math.min(1, (x - a.x) / (b.x - a.x));
    const end = a.diameter + share * (b.diameter - a.diameter);
    sum += cone(a.diameter, end, share * (b.x - a.x));
  }
  return sum;
}

function push(stations: Station[], station: Station): void {
  const last = stations[stations.length - 1];
  if (last && last.x === station.x && last.diameter === station.diameter) return;
  stations.push(station);
}
