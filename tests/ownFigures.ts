/** Figures of an invented two-litre four. */
export const FOUR: Record<string, string> = {
  'engine.cylinders': '4',
  'engine.bore': '86',
  'engine.stroke': '86 mm',
  'engine.compressionRatio': '11.5',
  'intake.trumpet.length': '60',
  'intake.throttle.bore': '45',
  'intake.port.length': '120',
  'intake.valves.count': '2',
  'intake.valves.headDiameter': '35',
  'intake.valves.lift.duration': '244',
  'intake.valves.lift.maximum': '10.5',
  'exhaust.primary.length': '800',
  'target.from': '5000',
  'target.to': '7000',
};
