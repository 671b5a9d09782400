// Where a chassis is hot: beside power resistors, output tubes, dampers and rectifiers.
import type { Part } from '#document/index.ts';
import { findTubeType } from '#handbook/tube-types.ts';
import type { Study, TerminalEntry } from '#study/index.ts';

/** Resistors of that many watts are there to get hot. */
const hotWatts = 5;

const hotTubes = /output|power (?:tube|pentode|triode)|damper|^rectifier|twin rectifier/i;

/** "V17, a rectifier", "R27, 5 W": why it is hot at a terminal; null where nothing tells. */
export function hotAt(study: Study, entry: TerminalEntry): string | null {
  const own = hotPart(entry.part);
  if (own !== null) return own;
  for (const { part } of study.index.leadsOn.get(entry.key) ?? []) {
    const words = hotPart(part);
    if (words !== null) return words;
  }
  return null;
}

const known = new WeakMap<Part, string | null>();

function hotPart(part: Part): string | null {
  const before = known.get(part);
  if (before !== undefined) return before;
  const words = readPart(part);
  known.set(part, words);
  return words;
}

function readPart(part: Part): string | null {
  if (part.kind === 'tube' && part.type !== undefined) {
    const what = findTubeType(part.type)?.what ?? '';
    return hotTubes.test(what) ? `${part.reference} (${what})` : null;
  }
  for (const element of Object.values(part.elements ?? {})) {
    const watts = 'watts' in element && typeof element.watts === 'number' ? element.watts : 0;
    if (element.kind === 'resistor' && watts >= hotWatts) return `${part.reference} (${watts} W)`;
  }
  return null;
}
