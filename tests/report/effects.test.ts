/** `check --effects`: defaults by what they move. */
import { expect, it } from 'vitest';
import type { EngineSpecification } from '../../sim/specification.ts';
import { checkStudy } from '../../sim/study/check/index.ts';
import { demoText, readDemo, toyRunner } from '../toy.ts';

const scenario = readDemo('hill-climb');
const asked = (options: { effects?: true }) => ({
  file: 'hill.yaml',
  text: demoText('hill-climb'),
  scenario,
  options,
  read: () => '',
});

/** Fills by the cylinder's wall, a little by the burn, by nothing else. */
const byWalls = ({ cylinder, combustion }: EngineSpecification) =>
  1 - (cylinder.wallTemperature - 450) / 4000 - (combustion.burnDuration - 28) / 4000;

async function found(options: { effects?: true }) {
  const computer = { ...toyRunner(({ engine }) => byWalls(engine)), task: async () => undefined };
  return checkStudy.open(asked(options)).run(computer as never, {});
}

it('ranks what stands for the defaults, and nothing that the file gives', async () => {
  const { document } = await found({ effects: true });
  const rows = (document as { defaults_by_effect: { key: string; moves_percent: number }[] })
    .defaults_by_effect;
  // 40 K either way is 1 % of the filling, 4 deg either way 0.1 %.
  expect(rows[0]).toMatchObject({ key: 'engine.wallTemperature' });
  expect(rows[0]!.moves_percent).toBeCloseTo(1, 9);
  expect(rows[1]).toMatchObject({ key: 'fuel.burnDuration' });
  expect(rows[1]!.moves_percent).toBeCloseTo(0.1, 9);
  expect(rows.slice(2).every((row) => row.moves_percent < 1e-9)).toBe(true);
  const taken = new Set(scenario.defaultsUsed.map(({ path }) => path));
  expect(rows.length).toBeGreaterThan(5);
  expect(rows.filter(({ key }) => !taken.has(key))).toEqual([]);
});

it('computes nothing unless asked', async () => {
  expect(checkStudy.open(asked({})).width).toBe(0);
  const { document } = await found({});
  expect(document).not.toHaveProperty('defaults_by_effect');
});
