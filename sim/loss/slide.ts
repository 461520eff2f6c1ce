/**
 * Open area of a slide: a plate with a round hole of the bore's own diameter D that is drawn across the bore.
 * Bore and hole, their centres d = D (1 - x) apart at the share x of the travel, have a lens in common:
 *
 *   4 A/(pi D^2) = (2/pi) (acos(d/D) - (d/D) sqrt(1 - (d/D)^2))
 *
 * A gap g all round leaves pi D g of what is covered besides.
 * Source: geometry of two equal circles, exact.
 */
import { circleArea } from '../duct/profile.ts';
import { asin } from '../elementary/angles.ts';
import { opened, type Travelling } from './travel.ts';

/** Open area [m^2] with its lever at `angle` [deg], 90 being wide open. */
export function slideOpenArea(slide: Travelling, angle: number): number {
  const apart = 1 - opened(slide, angle);
  const lens = 1 - (2 / Math.PI) * (asin(apart) + apart * Math.sqrt(1 - apart * apart));
  return circleArea(slide.bore) * lens + Math.PI * slide.bore * slide.rimGap * (1 - lens);
}
