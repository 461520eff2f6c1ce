/** `listen`: what is heard of the intake, as levels, engine orders and sounds. */
import { LENGTH, SPEED, shown } from '../../report/quantities.ts';
import type { Study } from '../study.ts';
import { askedSounds, LISTEN_OPTIONS } from './ask.ts';
import { type ListenStudy, listenSound, soundOf } from './compute.ts';
import { levelsTable, listenDocument, ordersHeld, ordersTable } from './tables.ts';
import { listenReport } from './tell.ts';

export const listenStudy: Study = {
  name: 'listen',
  help: 'what is heard of the intake: levels, engine orders, and sounds to play',
  options: LISTEN_OPTIONS,
  open(asked) {
    const { scenario } = asked;
    const question = askedSounds(asked);
    return {
      width: question.lengths.length * question.speeds.length,
      async run(computer, observer) {
        const study = await soundOf(question, computer, observer);
        const orders = study.lengths.flatMap((one) => ordersHeld(one, study.speed));
        return {
          stem: 'listen',
          document: listenDocument(study, scenario),
          report: listenReport(study, scenario),
          tables: {
            'listen.csv': levelsTable(study),
            'listen-orders.csv': ordersTable(orders, study.lengthUnit),
          },
          audio: { sounds: soundsOf(study), fullScale: study.fullScale },
          sound: listenSound(study),
        };
      },
    };
  },
};

function soundsOf({ lengths, speed }: ListenStudy) {
  const named = lengths.flatMap(({ length, held, runUp }) => {
    const stem = `listen-${shown(LENGTH, length)}mm`;
    return [
      [`${stem}-${shown(SPEED, speed)}rpm.wav`, held],
      [`${stem}-run-up.wav`, runUp],
    ] as const;
  });
  return Object.fromEntries(named.flatMap(([name, sound]) => (sound ? [[name, sound]] : [])));
}
