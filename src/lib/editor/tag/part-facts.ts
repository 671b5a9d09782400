// What the paper tag says of a part and of a terminal: what it is, what it is joined to, and which
// wires end there, each a step to the next pick.
import type { Part } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { Net, Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import { counted, needText } from '../core/words.ts';
import type { Fact } from './wire-facts.ts';

const plain = (label: string, value: string | undefined): Fact[] =>
  value === undefined || value === '' ? [] : [{ label, value, why: [] }];

/** "285 V dc, 5 kV pk" of a net; "not known" where nothing is. */
export const netVoltsText = (net: Net): string =>
  [
    net.dcV === null ? '' : `${formatVolts(net.dcV.value)} dc`,
    net.acV === null ? '' : `${formatVolts(net.acV.value)} ac`,
    net.pulseV === null ? '' : `${formatVolts(net.pulseV.value)} pk`
  ]
    .filter((part) => part !== '')
    .join(', ') || 'not known';

const netFacts = (net: Net | undefined): Fact[] => {
  if (net === undefined) return [];
  const why = [net.dcV, net.acV, net.pulseV].flatMap((amount) =>
    amount === null ? [] : [amount.basis]
  );
  const volts = netVoltsText(net);
  return [
    { label: 'Joined to', value: net.name, aside: counted(net.terminals.length, 'point'), why: [] },
    ...(net.isChassis
      ? []
      : [
          {
            label: 'Volts',
            value: volts,
            why,
            ...(volts === 'not known' && { tone: 'unknown' as const })
          }
        ])
  ];
};

/** The facts of a part's tag. */
export const buildPartFacts = (part: Part, study: Study): readonly Fact[] => {
  const unit = study.document.units[part.unit];
  return [
    ...plain('Kind', part.kind),
    ...plain('Type', part.type),
    ...plain('Value', part.value),
    ...plain('Does', part.function),
    ...plain('Unit', unit?.name),
    ...plain('Notes', part.notes)
  ];
};

/** The facts of a terminal's tag. */
export const buildTerminalFacts = (key: string, study: Study): readonly Fact[] => {
  const entry = study.index.terminalByKey.get(key);
  if (entry === undefined) return [];
  const netId = study.netOf.get(key);
  return [
    ...plain('Part', [entry.part.kind, entry.part.type ?? entry.part.value ?? ''].join(' ').trim()),
    ...plain('Ends as', entry.terminal.ending),
    ...plain('Grounded', entry.terminal.grounded === true ? 'to the metal of its unit' : undefined),
    ...netFacts(netId === undefined ? undefined : study.nets.get(netId)),
    ...plain('Notes', entry.terminal.notes)
  ];
};

export interface Lead {
  readonly wire: string;
  readonly number: string;
  /** The end that is not here. */
  readonly other: string;
  /** The terminal's name at this part; for a terminal's own tag empty. */
  readonly here: string;
  readonly needs: string;
}

/** The wires at a terminal, in the schedule's order. */
export const leadsAt = (key: string, study: Study, here = ''): readonly Lead[] =>
  (study.index.wiresAt.get(key) ?? []).map((wire) => {
    const isFrom =
      wire.from.at !== undefined && terminalKey(wire.from.at.part, wire.from.at.terminal) === key;
    return {
      wire: wire.id,
      number: wire.number || '–',
      other: study.index.labelOf(isFrom ? wire.to : wire.from),
      here,
      needs: needText(study.wires.get(wire.id)?.need ?? null)
    };
  });

/** The wires at a part, terminal by terminal. */
export const leadsOfPart = (part: Part, study: Study): readonly Lead[] =>
  (study.index.terminalsOf.get(part.id) ?? []).flatMap((terminal) =>
    leadsAt(terminalKey(part.id, terminal.id), study, terminal.name)
  );
