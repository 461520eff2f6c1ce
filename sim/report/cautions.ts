/** What a builder should mind, and what the computation knows and does not: said once for all. */

export const CAUTIONS: readonly string[] = [
  'Open trumpets swallow what is loose: rags, washers, hair, stones. Keep clear of them while the engine runs and fit filters or screens wherever the rules allow; a screen changes the flow, so compute with what you run.',
  'Fuel sprayed at or above open trumpets can stand off as fog over a hot engine and burns at once if it spits back. Keep an extinguisher at hand and ignition sources away, and shut the fuel off before you touch the trumpets.',
  'A trumpet that fills the cylinder better makes the old fuelling lean. Measure the mixture at every speed after a change, starting rich and at part load: a lean mixture at full load burns pistons.',
  'On a dynamometer guard everything that turns, tie the vehicle down, ventilate the exhaust and let no one stand in the plane of wheels, belts or flywheel.',
  'Check bonnet, hands and hoses for clearance with the engine rocking on its mounts; a trumpet that works loose goes down the port.',
  'Noise limits, emission rules, workshop practice and the rules of your sport come first, and so does the advice of whoever is licensed to do the work where you live.',
];

export const KNOWN: readonly string[] = [
  'Waves of finite strength in the whole intake and exhaust, second order in space and time: trumpet, plate, port, valve, cylinder, primary, joint and tail. Flare and outside air move as one mass that radiates.',
  'Valves by cam timing or lift table and by flow-bench figures; residual gas and back flow by what the pipes do.',
  'Air by pressure, temperature and humidity; heat and friction at the walls; mass and energy audited at every point.',
];

export const NOT_KNOWN: readonly string[] = [
  'The level is less certain than the difference: use the figures to compare lengths on one engine, not to quote power. Torque is indicated; at the flywheel it is less friction by a correlation that engines scatter about by a fifth.',
  'Without a section injectors fuel counts as burned mixture only: no spray, no wet walls. With one, drops and films follow published laws for single drops and flat films; a port is neither.',
  'Cylinders count as alike and evenly fed but for what the file says of single ones. Air above the mouths is still: no wind, no neighbour breathing next door; a box over them is a question of its own.',
  'Bends are losses, not shapes. Swirl, tumble and flow that leaves the wall are in the flow-bench figures or nowhere.',
  'Knock, valve float and the strength of anything are not looked at.',
];
