// In which order the work is done. One wire, or one socket, out, in and checked is the default: nothing
// has to be remembered. On a bare chassis what lies lowest comes first.
import type { Id, Part, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study, TerminalEntry, WireStudy } from '#study/index.ts';
import type { Plan, WirePlan } from './types.ts';

export const workModes = ['one wire', 'one socket', 'bare chassis'] as const;
export type WorkMode = (typeof workModes)[number];

export interface WorkStep {
  readonly title: string;
  readonly words: string;
  readonly wires: readonly { readonly wire: Id; readonly notes: readonly string[] }[];
}

/** Layers of a bare chassis, lowest first. Common practice, no source. */
const layers: readonly (readonly [title: string, words: string])[] = [
  ['Heaters', 'First, twisted where there are two, pressed into the corners close to the metal.'],
  ['Ground', 'Short, straight to the nearest lug.'],
  ['Supplies', 'Along the chassis, square, away from the grids.'],
  ['Signal', 'Short, over the rest, grids and plates apart from each other.'],
  [
    'Shielded and radio frequency',
    'Shields grounded as they were found; lengths and places as they were.'
  ],
  ['Pulse and high-voltage leads', 'Last, clear of all else, round joints and no points.']
];

/** The wires that something is done about, in steps. Done ones are left out. */
export function orderOfWork(
  study: Study,
  plan: Plan,
  mode: WorkMode = 'one wire'
): readonly WorkStep[] {
  const toDo = plan.wires.flatMap((own) => {
    const wire = findElement(study.document.wires, own.wire);
    const about = study.wires.get(own.wire);
    return wire && about && own.by !== 'done' && own.way !== 'keep' ? [{ own, wire, about }] : [];
  });
  const withNotes = ({ own, wire }: (typeof toDo)[number]) => ({
    wire: wire.id,
    notes: notesFor(study, wire, own)
  });
  if (mode === 'one wire') {
    return toDo.map((each) => ({
      title: each.wire.number === '' ? 'Unnumbered wire' : `Wire ${each.wire.number}`,
      words: 'Out, in, checked; then the next.',
      wires: [withNotes(each)]
    }));
  }
  if (mode === 'one socket') {
    const sockets = new Map<Part | null, typeof toDo>();
    for (const each of toDo) {
      const socket = socketOf(study, each.wire);
      sockets.set(socket, [...(sockets.get(socket) ?? []), each]);
    }
    return [...sockets].map(([part, own]) => ({
      title: part
        ? `${part.reference}${part.type === undefined ? '' : ` (${part.type})`}`
        : 'Not at a socket',
      words: 'All of it out, in and checked before the next socket is touched.',
      wires: own.map(withNotes)
    }));
  }
  return layers.flatMap(([title, words], layer) => {
    const own = toDo.filter(({ wire, about }) => layerOf(study, wire, about) === layer);
    return own.length === 0 ? [] : [{ title, words, wires: own.map(withNotes) }];
  });
}

/** The tube socket or strip that a wire is done with: that of its first end before that of its second. */
function socketOf(study: Study, wire: Wire): Part | null {
  const ends = [wire.from, wire.to].flatMap((end) => study.index.findAt(end) ?? []);
  return ends.find(({ part }) => part.kind === 'tube')?.part ?? ends[0]?.part ?? null;
}

/** Pulses and volts from here on are laid last. A matter of judgement, no source. */
const lastFromV = 1000;

function layerOf(study: Study, wire: Wire, { net: netId, roles, stress, need }: WireStudy): number {
  const net = netId === null ? undefined : study.nets.get(netId);
  const has = (role: 'heater' | 'ground' | 'second anode' | 'sweep' | 'signal'): boolean =>
    roles.has(role) || (net?.isSupply !== true && net?.roles.has(role) === true);
  if (
    (stress?.volts ?? 0) >= lastFromV ||
    has('second anode') ||
    (net?.pulseV?.value ?? 0) >= lastFromV
  )
    return 5;
  if (net?.isChassis === true || roles.has('ground')) return 1;
  if (has('heater') || net?.onLineSide === true) return 0;
  // Of a sweep wire whose pulse nobody wrote down nothing is known: it is laid as if it had one.
  if (has('sweep') && (need === null || need.atLeast)) return 5;
  if (net?.isSupply === true) return 2;
  const isShielded = wire.cable !== undefined || /coax|twin lead|shield/.test(wire.construction);
  return isShielded ? 4 : 3;
}

/** So many leads on a lug, and it is better not opened. Common practice, no source. */
const crowdedFrom = 4;

function notesFor(study: Study, wire: Wire, own: WirePlan): readonly string[] {
  const notes: string[] = [];
  for (const end of [wire.from, wire.to]) {
    const at = study.index.findAt(end);
    if (!at) continue;
    const leads = leadsAt(study, at);
    if (leads >= crowdedFrom)
      notes.push(
        `${study.index.labelOf(end)} is crowded (${leads} leads): cut the wire at the lug and leave the old wrap`
      );
  }
  const { keepLength, keepPlace, keepShort } = wire.critical ?? {};
  if (keepLength === true || keepPlace === true || keepShort === true)
    notes.push('critical lead: photograph it, keep its length and place');
  if (wire.number.trim() === '') notes.push('it has no number: tag it before it comes out');
  if (own.unmet) notes.push('nothing is there for it yet: leave the old one in');
  return notes;
}

/** Leads and wires that share a terminal; as many as were counted where that is more. */
export const leadsAt = ({ index }: Study, { key, terminal }: TerminalEntry): number =>
  Math.max(
    (index.wiresAt.get(key)?.length ?? 0) + (index.leadsOn.get(key)?.length ?? 0),
    terminal.leadsCounted ?? 0
  );
