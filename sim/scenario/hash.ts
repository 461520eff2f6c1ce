/**
 * A name for what a scenario asks: equal data give equal hashes on every machine, whatever the
 * order of keys, the units or the remarks of the file.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonicalJson } from '../canonicalJson.ts';
import type { Scenario } from './resolve.ts';

/**
 * SHA-256 of the resolved engine, speeds, lengths and band as canonical JSON, 64 hexadecimal digits.
 * Title, notes, warnings and the list of defaults do not count, nor do injectors, pedal,
 * pressure bar and idle, of which the lengths ask nothing; the values of defaults do.
 */
export function scenarioHash(scenario: Scenario): string {
  const { engine, speeds, sweep, target, fit, uncertainty } = scenario;
  const asked = { engine: { ...engine, title: '' }, speeds, sweep, target, fit, uncertainty };
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(asked))));
}
