import { describe, expect, test } from 'vitest';
import { DIMENSIONS, type DimensionName } from '../../sim/scenario/dimension.ts';
import { quantityPattern, readQuantity } from '../../sim/scenario/quantity.ts';

function read(text: unknown, dimension: DimensionName, context = {}) {
  const quantity = readQuantity(text, dimension, context);
  if ('problem' in quantity) throw new Error(quantity.problem);
  return quantity;
}

const problem = (text: unknown, dimension: DimensionName, context = {}) => {
  const quantity = readQuantity(text, dimension, context);
  return 'problem' in quantity ? quantity.problem : 'no problem';
};

describe('units against their definitions', () => {
  const inch = 0.0254; // exact: international yard and pound agreement, 1959
  const pound = 0.45359237; // [kg], exact, same agreement
  const gravity = 9.80665; // [m/s^2], exact: 3rd CGPM, 1901
  test.each<[string, DimensionName, number]>([
    ['1 in', 'length', inch],
    ['3.4 in', 'length', 3.4 * inch],
    ['1 inch', 'length', inch],
    ['2 "', 'length', 2 * inch],
    ['40 thou', 'length', 0.04 * inch],
    ['1 ft', 'length', 12 * inch],
    ['380 mm', 'length', 0.38],
    ['38 cm', 'length', 0.38],
    ['45 um', 'length', 45e-6],
    ['1 cfm', 'flow', (12 * inch) ** 3 / 60],
    ['1 m3/h', 'flow', 1 / 3600],
    ['1 L/s', 'flow', 1e-3],
    ['60 l/min', 'flow', 1e-3],
    ['1 psi', 'pressure', (pound * gravity) / inch ** 2],
    ['1 atm', 'pressure', 101325], // exact: 10th CGPM, 1954
    ['1 bar', 'pressure', 1e5],
    ['985 mbar', 'pressure', 98500],
    ['1 inH2O', 'pressure', 249.08891], // conventional: NIST SP 811 (2008), appendix B.8
    ['1 inHg', 'pressure', 3386.389], // conventional: NIST SP 811 (2008), appendix B.8
    ['1 mmHg', 'pressure', 133.3224], // conventional: NIST SP 811 (2008), appendix B.8
    ['0 degC', 'temperature', 273.15],
    ['32 degF', 'temperature', 273.15],
    ['212 degF', 'temperature', 373.15],
    ['-40 °C', 'temperature', 233.15],
    ['-40 °F', 'temperature', 233.15],
    ['300 K', 'temperature', 300],
    ['6500 rpm', 'speed', 6500],
    ['6500 1/min', 'speed', 6500],
    ['55 %', 'ratio', 0.55],
    ['12.4:1', 'ratio', 12.4],
    ['1e-3', 'ratio', 0.001],
    ['.5', 'ratio', 0.5],
  ])('%s', (text, dimension, value) => {
    // mmHg is rounded to seven digits in the source; all others agree to round-off.
    const tolerance = text.endsWith('mmHg') ? 4e-6 : 1e-14;
    expect(Math.abs(read(text, dimension).value / value - 1)).toBeLessThan(tolerance);
  });

  test('28 inches of water are 6974.5 Pa, to the five figures of the trade', () => {
    expect(read('28 inH2O', 'pressure').value).toBeCloseTo(6974.5, 1);
  });

  test('a cubic foot a minute is 4.719474e-4 m3/s', () => {
    // NIST SP 811 (2008), appendix B.8: 4.719 474 E-04.
    expect(read('1 cfm', 'flow').value).toBeCloseTo(4.719474e-4, 10);
  });

  test('a plain millimetre leaves no round-off', () => {
    expect(read('86 mm', 'length').value).toBe(0.086);
    expect(read('3.4 in', 'length').value).toBe(0.08636);
  });
});

describe('crank angles', () => {
  // Convention of sim/specification.ts: 0 firing top, 180 bottom, 360 top, 540 bottom [deg].
  const intake = { deadCentres: { top: 360, bottom: 540 } };
  const exhaust = { deadCentres: { top: 360, bottom: 180 } };
  const firing = { deadCentres: { top: 0, bottom: 180 } };
  test.each([
    ['24 deg BTDC', intake, 336],
    ['10 deg ATDC', intake, 370],
    ['62 deg ABDC', intake, 602],
    ['20 deg BBDC', intake, 520],
    ['58 deg BBDC', exhaust, 122],
    ['26 deg ATDC', exhaust, 386],
    ['4 deg BTDC', exhaust, 356],
    ['8 deg ATDC', firing, 8],
    ['8 deg BTDC', firing, -8],
    ['336 deg', intake, 336],
    ['-5 deg', firing, -5],
    ['62° ABDC', intake, 602],
  ])('%s', (text, context, angle) => {
    expect(read(text, 'angle', context).value).toBe(angle);
  });
});

describe('spread', () => {
  test.each<[string, DimensionName, number, number]>([
    ['62 deg ABDC +- 2 deg', 'angle', 602, 2],
    ['24 deg BTDC +/- 1.5 deg', 'angle', 336, 1.5],
    ['10.4 mm ± 0.1 mm', 'length', 0.0104, 0.0001],
    ['10.4mm±0.1mm', 'length', 0.0104, 0.0001],
    ['20 degC +- 3 degC', 'temperature', 293.15, 3],
    ['68 degF +- 9 degF', 'temperature', 293.15, 5],
    ['12.4 +- 0.2', 'ratio', 12.4, 0.2],
    ['55 % +- 5 %', 'ratio', 0.55, 0.05],
  ])('%s', (text, dimension, value, spread) => {
    const quantity = read(text, dimension, { deadCentres: { top: 360, bottom: 540 } });
    expect(quantity.value).toBeCloseTo(value, 12);
    expect(quantity.spread).toBeCloseTo(spread, 12);
  });

  test('without one it is 0', () => {
    expect(read('86 mm', 'length').spread).toBe(0);
  });
});

describe('gauge pressure', () => {
  test('is marked where it is allowed', () => {
    expect(read('0.7 bar gauge', 'pressure', { gauge: true })).toMatchObject({
      value: 70_000,
      gauge: true,
    });
    expect(read('1.7 bar absolute', 'pressure', { gauge: true }).gauge).toBe(false);
  });

  test('is refused elsewhere', () => {
    expect(problem('0.7 bar gauge', 'pressure')).toBe('"gauge" has no meaning here');
  });
});

describe('what is no quantity says why', () => {
  test.each<[unknown, DimensionName, string]>([
    ['86 kPa', 'length', '"86 kPa" is a pressure, not a length'],
    ['86 km/h', 'length', '"km/h" is not a unit of length'],
    ['86 MM', 'length', '"MM" is not a unit of length'],
    ['86', 'length', '86 has no unit'],
    [86, 'length', '86 has no unit'],
    ['eighty mm', 'length', 'cannot read "eighty mm" as a length'],
    ['86,5 mm', 'length', 'cannot read "86,5 mm" as a length'],
    ['40 + 46 mm', 'length', 'cannot read "40 + 46 mm" as a length'],
    ['2 * 43 mm', 'length', 'cannot read "2 * 43 mm" as a length'],
    ['sqrt(4) mm', 'length', 'cannot read "sqrt(4) mm" as a length'],
    ['0x56 mm', 'length', 'cannot read "0x56 mm" as a length'],
    ['1e999 mm', 'length', 'Infinity is not a finite number'],
    [Number.NaN, 'ratio', 'NaN is not a finite number'],
    [Number.POSITIVE_INFINITY, 'length', 'Infinity is not a finite number'],
    ['NaN mm', 'length', 'cannot read "NaN mm" as a length'],
    ['', 'length', 'cannot read "" as a length'],
    [null, 'length', 'must be a length, found nothing'],
    [true, 'length', 'must be a length, found a boolean'],
    [['86 mm'], 'length', 'must be a length, found a list'],
    [{ mm: 86 }, 'length', 'must be a length, found a section of keys'],
    ['86 constructor', 'length', '"constructor" is not a unit of length'],
    ['62 deg ABDC', 'angle', '"ABDC" has no meaning here'],
    ['86 mm ABDC', 'length', '"ABDC" has no meaning here'],
    ['86 mm +- 1 in', 'length', 'value and spread have different units ("mm" and "in")'],
    ['86 mm +- -1 mm', 'length', 'the spread -1 is no half-width'],
  ])('%j as %s', (text, dimension, words) => {
    expect(problem(text, dimension)).toContain(words);
  });

  test('a unit in the wrong case is put right', () => {
    expect(readQuantity('86 MM', 'length')).toMatchObject({
      remedy: expect.stringContaining('did you mean "mm"?'),
    });
  });
});

test('the pattern for editors takes every unit and example, and no unit of another kind', () => {
  for (const [name, { units, example }] of Object.entries(DIMENSIONS)) {
    const dimension = name as DimensionName;
    const pattern = new RegExp(
      quantityPattern(dimension, { deadCentres: { top: 360, bottom: 540 } }),
      'u',
    );
    expect(example).toMatch(pattern);
    for (const unit of Object.keys(units)) expect(`1.5 ${unit}`.trim()).toMatch(pattern);
    expect('86 kg').not.toMatch(pattern);
  }
});

describe('as the trade writes it', () => {
  const CAM = { deadCentres: { top: 360, bottom: 540 } };
  const value = (text: string, dimension: DimensionName, context = {}) => {
    const read = readQuantity(text, dimension, context);
    return 'problem' in read ? read.problem : read.value;
  };

  test.each([
    ['38 BTDC', 322],
    ['38BTDC', 322],
    ['60 ABDC', 600],
    ['62.5 deg ABDC', 602.5],
  ])('%s', (text, angle) => {
    expect(value(text, 'angle', CAM)).toBe(angle);
    expect(new RegExp(quantityPattern('angle', CAM)).test(text)).toBe(true);
  });

  // The international inch is 25.4 mm exactly.
  test.each([
    ['1 3/4 in', 0.04445],
    ['1-3/4 in', 0.04445],
    ['3/4"', 0.01905],
    ['15/16 inch', 0.0238125],
  ])('%s', (text, length) => {
    expect(value(text, 'length')).toBeCloseTo(length, 12);
    expect(new RegExp(quantityPattern('length')).test(text)).toBe(true);
  });

  test.each([
    ['10 psig', 'write "10 psi gauge"'],
    ['0.7 bar(g)', 'write "0.7 bar gauge"'],
    ['1.7 bara', 'write "1.7 bar absolute"'],
  ])('%s is answered with what to write', (text, remedy) => {
    const read = readQuantity(text, 'pressure', { gauge: true });
    expect(read).toMatchObject({ remedy });
  });

  test('what is no fraction of a length is refused', () => {
    expect(value('1/0 in', 'length')).toContain('cannot read');
    expect(value('1 3/4 bar', 'pressure')).toContain('cannot read');
    expect(value('38 BTDC', 'length')).toContain('not a unit of length');
  });
});
