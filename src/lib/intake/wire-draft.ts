// A wire while its row is being read: the ends as text has them, and the fields of the document
// that its cells give. What could not be read goes to the notes, with its heading.
import type { Carries, Wire, WireState } from '#document/index.ts';
import type { ConductorFields } from './conductor-cells.ts';
import type { EndReading } from './read-end.ts';

export interface EndFields {
  end: EndReading;
  unit: string | null;
  type: string | null;
  termination?: string;
  stripMm?: number;
  sleeve?: string;
}

export interface WireDraft {
  readonly row: number;
  number: string;
  readonly from: EndFields;
  readonly to: EndFields;
  /** A tube type or base that belongs to one of the ends. */
  endType: { readonly text: string; readonly column: string } | null;
  construction: string | null;
  function: string | null;
  cable: string | null;
  /** Words that may tell what kind of cable it is. */
  cableHint: string;
  conductor: string | null;
  readonly carries: Carries;
  readonly found: ConductorFields & { condition?: string };
  readonly planned: ConductorFields & { way?: NonNullable<Wire['planned']['way']>; notes?: string };
  origin: NonNullable<Wire['origin']> | null;
  tapedMm: number | null;
  critical: NonNullable<Wire['critical']> | null;
  dress: string | null;
  state: WireState;
  readonly notes: string[];
}

const noEnd = (): EndFields => ({ end: { kind: 'unknown', text: '' }, unit: null, type: null });

/** A wire of which nothing is known yet. */
export const emptyWireDraft = (row: number): WireDraft => ({
  row,
  number: '',
  from: noEnd(),
  to: noEnd(),
  endType: null,
  construction: null,
  function: null,
  cable: null,
  cableHint: '',
  conductor: null,
  carries: {},
  found: {},
  planned: {},
  origin: null,
  tapedMm: null,
  critical: null,
  dress: null,
  state: 'found',
  notes: []
});
