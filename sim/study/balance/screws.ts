/** From readings of bodies to screws: which, which way, how many turns, in which order, and what is left. */
import { type BodyErrors, type BodyQuestion, bodyErrors } from '../../decision/bodyErrors.ts';
import type { Screws } from '../../scenario/bodyReadings.ts';
import type { ReadState } from '../../scenario/cylinderRows.ts';

export interface ScrewsQuestion extends BodyQuestion {
  states: readonly ReadState[];
  screws: Screws;
  /** Numbers of the gauges as the file has them. */
  gauges: readonly number[];
  /** Effective area of a bleed whose screw is out [m^2]; 0 where there is none. */
  wholeBleed: number;
}

/** A screw to turn; plus is in, which opens a plate at its stop and shuts a bleed. */
export interface Turn {
  screw: 'stop' | 'bleed';
  /** From 0. */
  body: number;
  /** [turns], and one standard deviation. */
  turns: number;
  deviation: number;
}

export interface ScrewsStudy {
  question: ScrewsQuestion;
  errors: BodyErrors;
  /** Every screw of every body, in the order of work. */
  turns: Turn[];
}

/** Smallest part of a turn that a screw is set by; common practice, no source. */
const LEAST_TURN = 1 / 16;

/** An error counts as there beyond so many of its standard deviations. */
const SEEN = 2;
const DEGREES = 180 / Math.PI;

export function screwsStudy(asked: Omit<ScrewsQuestion, 'steps'>): ScrewsStudy {
  const { screws, wholeBleed } = asked;
  const steps = {
    plate: LEAST_TURN * degreesPerTurn(screws),
    bleed: (LEAST_TURN * wholeBleed) / screws.bleedTurns,
  };
  const question = { ...asked, steps };
  const errors = bodyErrors(question);
  return {
    question,
    errors,
    turns: [...stopTurns(question, errors), ...bleedTurns(question, errors)],
  };
}

/** Whether a screw wants turning: by more than its doubt, and more than half the least it is set by. */
export function worthTurning({ turns, deviation }: Turn): boolean {
  return Math.abs(turns) > SEEN * deviation && Math.abs(turns) > LEAST_TURN / 2;
}

/** Angle of the plate that a whole turn of its stop screw gives [deg]. */
export function degreesPerTurn({ pitch, lever }: Screws): number {
  return (pitch / lever) * DEGREES;
}

/** The master first, since it stays, then those farthest off. */
function stopTurns({ screws, master = -1 }: ScrewsQuestion, { toMove }: BodyErrors): Turn[] {
  const step = degreesPerTurn(screws);
  const turns = toMove.map(
    ({ value, deviation }, body): Turn => ({
      screw: 'stop',
      body,
      turns: -value / step,
      deviation: deviation / step,
    }),
  );
  return farthestFirst(turns, master);
}

function bleedTurns({ screws, wholeBleed }: ScrewsQuestion, { bleeds }: BodyErrors): Turn[] {
  if (wholeBleed === 0) return [];
  const step = wholeBleed / screws.bleedTurns;
  const turns = bleeds.map(
    ({ value, deviation }, body): Turn => ({
      screw: 'bleed',
      body,
      turns: value / step,
      deviation: deviation / step,
    }),
  );
  return farthestFirst(turns, -1);
}

function farthestFirst(turns: readonly Turn[], master: number): Turn[] {
  const rank = ({ body, turns: by }: Turn) => (body === master ? Number.MAX_VALUE : Math.abs(by));
  return [...turns].sort((a, b) => rank(b) - rank(a));
}
