/** The command `worth` on the hill-climb four on a coarse mesh: one page from other studies' results. */
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { slow } from '../slow.ts';
import { answer, coarseText, fileOf, freshFolder } from './commandLine.ts';
import { knownAnswer } from './knownAnswer.ts';

const text = coarseText()
  .replace('step: 100 mm', 'step: 200 mm')
  .concat('\nplenum:\n  volume: 2.5 L\n\nidle:\n  speed: 1000 rpm\n');

/** At 4800 rpm [ms]. */
const TEN_CYCLES = 250;

/** Figure and unit stand on one line whatever the width. */
const joined = (lines: string) => lines.replace(/\s+/g, ' ');

describe('worth', () => {
  it('says in its first sentence what the studies found, and writes a page to print', async () => {
    const { code, stdout, stderr, files } = await knownAnswer('hill-climb', 'worth');
    expect(stderr).toBe('');
    expect(code).toBe(0);
    const document = JSON.parse(files['worth.json']!);
    expect(document.schema).toEqual({ name: 'trumpetry-worth', version: 1 });
    const { gain_in_band_percent: gain, band_mean: mean } = document.recommended_against_plenum;
    const said = joined(stdout);
    const size = `${Math.abs(gain).toFixed(1)} % ${gain < 0 ? 'less' : 'more'}`;
    const length = document.recommended_length_mm;
    expect(said).toContain(`individual bodies give ${size} from 5400 to 7400 rpm`);
    expect(said).toMatch(
      new RegExp(`on trumpets of ${length} mm against one throttle of .* a plenum of 2500 cm3`),
    );
    const { bodies, plenum } = document.most_brake_power;
    expect(said).toContain(
      `${Number(bodies.kW.toPrecision(3))} kW for ${Number(plenum.kW.toPrecision(3))} kW at best`,
    );
    expect(said).not.toMatch(/nobody measured|no section plenum|no section idle/);
    expect(said).toContain('no section pedal');
    expect(document.idle_best).not.toBeNull();
    expect(document.closes_with_any_part_gone).toBeNull();
    // What moves most stands first among what is to be measured.
    const [first] = document.defaults_by_effect;
    expect(said).toContain(`Measure before you buy - ${first.key}, taken as`);
    const { data, errors } = Papa.parse<Record<string, string>>(files['worth.csv']!, {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data[0]).toMatchObject({
      what: 'mean volumetric efficiency in the band',
      individual_bodies: mean.toFixed(3),
      plenum: (mean / (1 + gain / 100)).toFixed(3),
    });
    expect(data.map(({ more }) => more)).toEqual(
      expect.arrayContaining(['response', 'signal', 'meter', 'balance', 'idle']),
    );
    const [little, wide] = document.response;
    expect([little.speed_rpm, wide.speed_rpm]).toEqual([4800, 4800]);
    for (const { all_there_ms: there } of [little, wide]) {
      expect(said).toContain(`${there.bodies.toFixed(0)} ms on when opened`);
      const late = there.plenum === null ? 'more than 10 cycles' : `${there.plenum.toFixed(0)} ms`;
      expect(said).toContain(`(plenum ${late})`);
    }
    // Opened a little the port answers and the plenum fills first.
    const { bodies: bodiesThere, plenum: plenumThere } = little.all_there_ms;
    expect(plenumThere ?? TEN_CYCLES).toBeGreaterThan(1.5 * bodiesThere);
    const counts = Object.values<number>(document.sensor_trusted_at);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(25);
    expect(said).toContain(`at ${Math.max(...counts.slice(0, 3))}, within 5 % of the air`);
    const page = files['worth.html']!;
    expect(page).toMatch(/@media print/);
    expect(page).not.toMatch(/(src|href)="https?:/);
  });

  slow('computes all of it on the spot', { timeout: 600_000 }, async () => {
    const { code, stderr } = await answer('worth', fileOf(text), '--out', freshFolder());
    expect(stderr).toBe('');
    expect(code).toBe(0);
  });

  it('refuses what is no question of it with a remedy and ends with 2', async () => {
    const wrong = text.replace('volume: 2.5 L', 'volume: 2.5 mm');
    const { code, stdout, stderr } = await answer('worth', fileOf(wrong));
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/:\d+:\d+ plenum\.volume: [\s\S]*remedy/);
  });
});
