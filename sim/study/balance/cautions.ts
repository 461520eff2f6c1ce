/** What to mind around a running engine with open mouths. */
export const BALANCE_CAUTIONS: readonly string[] = [
  'Every plate must still fall shut by its own spring from any opening when the screws are set: try it cold, hot, and with the engine rocking. No screw may hold a plate open beyond its idle.',
  'Hands, hair, sleeves and gauge hoses stay clear of open mouths, belts and fans; the engine draws in what is loose. Block the wheels, brake on, out of gear.',
  'Exhaust gas kills indoors: lead it outside and have a carbon monoxide alarm. Pipes and coolant burn.',
  'Petrol stands at the mouths: no open flame or sparks, an extinguisher at hand, fuel off before a hose is pulled.',
  'A cylinder given more air by its bleed runs leaner on the same fuel: look at the mixture of each after balancing, before load.',
  'Where ports are joined by a balance pipe, vacuum gauges agree more than the air does: shut the pipe while reading, or read flow at the mouths.',
  'The maker of the bodies, local law and licensed practice come before anything here.',
];
