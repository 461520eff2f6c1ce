/** The fast published checks, one test each, and the page made of them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Outcome, outcomeOf } from './check.ts';
import { GROUPS } from './proof.ts';
import { SOURCES } from './sources.ts';
import { proofMarkdown } from './table.ts';

const fast = GROUPS.map(({ name, checks }) => ({ name, checks: checks.filter((c) => !c.slow) }));
const outcomes: Outcome[] = [];

describe.each(fast)('$name', ({ name, checks }) => {
  it.each(checks)('$what', (check) => {
    const outcome = outcomeOf(name, check);
    outcomes.push(outcome);
    expect(outcome.holds, `published ${outcome.published}, ours ${outcome.ours}`).toBe(true);
  });
});

describe('the table', () => {
  it('is the one in docs/proof.md', () => {
    const all = fast.reduce((sum, { checks }) => sum + checks.length, 0);
    expect(outcomes.length, 'run this file whole').toBe(all);
    // Written by `trumpetry prove`.
    expect(proofMarkdown(outcomes)).toBe(readFileSync('docs/proof.md', 'utf8'));
  });

  it('names each check once', () => {
    for (const { checks } of GROUPS) {
      const keys = checks.map(({ what, source }) => `${what} ${source}`);
      expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
    }
  });

  it('says of each source who, or that there is none, and how its value was come by', () => {
    for (const source of Object.values(SOURCES)) {
      expect(source).toMatch(
        /common practice, no source|\((?:.*from memory|.*computed.*|as printed|as in the library.*|.*as computed by.*)\)$/,
      );
    }
  });

  it('uses every source', () => {
    const used = new Set(GROUPS.flatMap(({ checks }) => checks.map(({ source }) => source)));
    expect(Object.keys(SOURCES).filter((name) => !used.has(name as never))).toEqual([]);
  });
});

describe('a check', () => {
  const row = { what: '', source: 'sod', run: () => 1.02 } as const;
  it('fails beyond its tolerance, outside its band, and where it throws', () => {
    const holds = (check: Parameters<typeof outcomeOf>[1]) => outcomeOf('', check).holds;
    expect(holds({ ...row, published: 1, tolerance: { relative: 0.02 } })).toBe(true);
    expect(holds({ ...row, published: 1, tolerance: { relative: 0.019 } })).toBe(false);
    expect(holds({ ...row, published: 1, tolerance: { absolute: 0.01 } })).toBe(false);
    expect(holds({ ...row, published: [1, 1.1], tolerance: { absolute: 0 } })).toBe(true);
    expect(holds({ ...row, published: [1.03, 1.1], tolerance: { absolute: 0 } })).toBe(false);
    const broken = () => {
      throw new Error('no');
    };
    expect(holds({ ...row, published: 1, tolerance: { absolute: 1 }, run: broken })).toBe(false);
  });
});
