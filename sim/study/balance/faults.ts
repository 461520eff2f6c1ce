/** What else makes one body differ from the others: a shaft that is worn, a bleed screw, a trumpet. */
import type { EngineSpecification, ThrottleSpecification } from '../../specification.ts';

export interface Fault {
  /** In words, with its size. */
  name: string;
  /** The engine with it in every body; undefined where there is nothing to go wrong. */
  of(engine: EngineSpecification): EngineSpecification | undefined;
}

/** Play of a worn shaft in its bearings [m]; trumpet that is longer [m]: common practice, no source. */
const PLAY = 0.0001;
const LONGER = 0.02;
/** Half a turn of three of a screw in a drilling [m] where the file has none; common practice, no source. */
const TURNED = 0.5 / 3;
const USUAL_DRILLING = 0.0025;

export const FAULTS: readonly Fault[] = [
  { name: 'worn shaft, 0.1 mm of play', of: withWornShaft },
  { name: 'bleed screw half a turn out', of: withBleedOpened },
  { name: 'trumpet 20 mm longer', of: withLongerTrumpet },
];

/**
 * Air past the bearings: a ring as wide as half the play at either end, of which half lies behind the plate,
 * pi d PLAY / 2 together. It is let through like a drilled hole, which such a narrow ring is not: the most it can be.
 */
function withWornShaft(engine: EngineSpecification): EngineSpecification | undefined {
  const { shaftDiameter, bleed } = engine.intake.throttle;
  if (shaftDiameter === 0) return undefined;
  const ring = 2 * shaftDiameter * PLAY;
  return withBleed(engine, {
    bore: Math.sqrt((bleed ? bleed.open * bleed.bore * bleed.bore : 0) + ring),
    open: 1,
  });
}

function withBleedOpened(engine: EngineSpecification): EngineSpecification {
  const { bore, open } = engine.intake.throttle.bleed ?? { bore: USUAL_DRILLING, open: 0 };
  return withBleed(engine, { bore, open: open + TURNED });
}

function withBleed(
  engine: EngineSpecification,
  bleed: NonNullable<ThrottleSpecification['bleed']>,
): EngineSpecification {
  const throttle = { ...engine.intake.throttle, bleed };
  return { ...engine, intake: { ...engine.intake, throttle } };
}

function withLongerTrumpet(engine: EngineSpecification): EngineSpecification {
  const { trumpet, trumpetLengths } = engine.intake;
  const intake = {
    ...engine.intake,
    trumpet: { ...trumpet, length: trumpet.length + LONGER },
    ...(trumpetLengths && { trumpetLengths: trumpetLengths.map((length) => length + LONGER) }),
  };
  return { ...engine, intake };
}
