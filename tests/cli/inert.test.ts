/** A key that changes nothing in what a command computes is refused: its rows would all be alike. */
import { expect, test } from 'vitest';
import { answerOf } from '../golden/calls.ts';
import { computerOf } from '../golden/computer.ts';

const refuse = () => Promise.reject(new Error('reached the computer'));
const none = () => computerOf(refuse, refuse);

test.each(['table', 'sweep'])(
  '%s refuses a key of the injectors and names what tries it',
  async (command) => {
    const words = [command, '--vary', 'injectors.each.1.fromMouth=-60 mm,-20 mm'];
    const { code, stderr, stdout } = await answerOf(
      'endurance-six',
      { name: command, words },
      none,
    );
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.replaceAll(/\s+/g, ' ')).toContain(
      '--vary injectors.each.1.fromMouth: changes nothing that is computed here; inject --vary tries keys of the injectors',
    );
  },
);

test('of two keys the one that changes nothing is named', async () => {
  const words = [
    'table',
    '--vary',
    'intake.port.length=80 mm,90 mm',
    '--vary',
    'idle.speed=900 rpm,1000 rpm',
  ];
  const { code, stderr } = await answerOf('endurance-six', { name: 'table', words }, none);
  expect(code).toBe(2);
  expect(stderr).toContain('--vary idle.speed: changes nothing');
});

test('a single value of such a key is no reason to refuse', async () => {
  const words = ['table', '--vary', 'idle.speed=900 rpm'];
  const { stderr } = await answerOf('endurance-six', { name: 'table', words }, none);
  expect(stderr).toContain('reached the computer');
});

test('inject tries keys of its own section alone', async () => {
  const words = ['inject', '--vary', 'intake.port.length=80 mm,90 mm'];
  const { code, stderr } = await answerOf('endurance-six', { name: 'inject', words }, none);
  expect(code).toBe(2);
  expect(stderr).toContain('--vary intake.port.length: inject tries keys of the injectors');
});

test('inject refuses a value that the file could not have', async () => {
  const words = ['inject', '--vary', 'injectors.each.1.dropSize=2 m'];
  const { code, stderr } = await answerOf('endurance-six', { name: 'inject', words }, none);
  expect(code).toBe(2);
  expect(stderr).toContain('injectors.each.1.dropSize');
});
