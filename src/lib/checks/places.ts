// Places that findings are tied to, with the words that people find them by.
import type { Cable, Part, Wire } from '#document/index.ts';
import { terminalText } from '#study/index-document.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import type { FindingPlace } from './finding.ts';

export const wirePlace = (study: Study, wire: Wire): FindingPlace => ({
  kind: 'wire',
  id: wire.id,
  label: wireLabel(study, wire)
});

/** "wire 12", or where an unnumbered wire runs. */
export const wireLabel = ({ index }: Study, wire: Wire): string =>
  wire.number === ''
    ? `the unnumbered wire from ${index.labelOf(wire.from)} to ${index.labelOf(wire.to)}`
    : `wire ${wire.number}`;

export const partPlace = (part: Part): FindingPlace => ({
  kind: 'part',
  id: part.id,
  label: part.reference || part.kind
});

export const terminalPlace = (study: Study, entry: TerminalEntry): FindingPlace => ({
  kind: 'terminal',
  id: entry.key,
  label: terminalText(study.document, entry)
});

export const cablePlace = (cable: Cable): FindingPlace => ({
  kind: 'cable',
  id: cable.id,
  label: `cable ${cable.name}`
});

export const documentPlace = ({ document }: Study): FindingPlace => ({
  kind: 'document',
  id: document.id,
  label: document.identity.title || 'the chassis'
});
