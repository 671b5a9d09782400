// Wire gauges as people write them: 22, #22, 22 AWG, AWG 22, 22 ga, 2/0, 00.
import { formatAwg } from './format.ts';

const prefixes = ['awg', 'no.', 'no', '#', 'gauge'];
const suffixes = ['awg', 'ga.', 'ga', 'gauge', 'g'];

export type GaugeReading =
  { readonly ok: true; readonly awg: number } | { readonly ok: false; readonly problem: string };

/** The gauge in a normalised text: 0 for 1/0, -1 for 2/0, -3 for 4/0, which may be written so too.
 *  Example:  readGauge("2/0 AWG").awg // -1
 */
export function readGauge(text: string): GaugeReading {
  const number = stripWords(text.toLowerCase());
  const zeros = /^([1-4])\/0$/.exec(number);
  if (zeros) return { ok: true, awg: 1 - Number(zeros[1]) };
  if (/^0{2,4}$/.test(number)) return { ok: true, awg: 1 - number.length };
  if (/^-[1-3]$/.test(number)) return { ok: true, awg: Number(number) };
  if (!/^\d{1,3}$/.test(number)) {
    return { ok: false, problem: 'a gauge is a whole number such as 22, or 1/0 to 4/0' };
  }
  const awg = Number(number);
  if (awg > 50) return { ok: false, problem: `${formatAwg(awg)} is beyond 50 AWG, the thinnest` };
  return { ok: true, awg };
}

/** The text without one word for "gauge" before and one behind the number. */
function stripWords(text: string): string {
  const prefix = prefixes.find((word) => text.startsWith(word)) ?? '';
  const rest = text.slice(prefix.length).trim();
  const suffix = suffixes.find((word) => rest.endsWith(word)) ?? '';
  return rest.slice(0, rest.length - suffix.length).trim();
}
