// The tag of whatever is picked, as plain data.
import type { Finding } from '#checks/index.ts';
import type { Wire } from '#document/index.ts';
import { terminalText } from '#study/index-document.ts';
import type { Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { Pick } from '../core/pick.ts';
import {
  buildPartFacts,
  buildTerminalFacts,
  leadsAt,
  leadsOfPart,
  type Lead
} from './part-facts.ts';
import { buildWireFacts, type Fact } from './wire-facts.ts';

export interface TagView {
  /** The same for the same pick. */
  readonly key: string;
  readonly title: string;
  readonly subtitle: string;
  readonly facts: readonly Fact[];
  readonly findings: readonly Finding[];
  readonly wire: Wire | null;
  /** For a terminal: the name that a wire's end would be given. */
  readonly terminalLabel: string | null;
  /** For parts and terminals: the wires that end there. */
  readonly leads: readonly Lead[] | null;
  /** For parts and terminals: where a pin walk would begin. */
  readonly walk: { readonly part: string; readonly terminal?: string } | null;
}

/** Findings that concern a pick; a part's include those of its terminals, a wire's those of its net. */
export const findingsOf = (
  pick: Pick,
  study: Study,
  findings: readonly Finding[]
): readonly Finding[] => {
  const keys = new Set([`${pick.kind} ${pick.id}`]);
  if (pick.kind === 'part') {
    for (const { id } of study.index.terminalsOf.get(pick.id) ?? []) {
      keys.add(`terminal ${terminalKey(pick.id, id)}`);
    }
  }
  if (pick.kind === 'wire') {
    const net = study.wires.get(pick.id)?.net;
    const cable = study.document.wires[pick.id]?.cable;
    if (net !== undefined && net !== null) keys.add(`net ${net}`);
    if (cable !== undefined) keys.add(`cable ${cable}`);
  }
  return findings.filter(({ at }) => at.some((place) => keys.has(`${place.kind} ${place.id}`)));
};

/** The tag, or null where what was picked is gone. */
export const buildTag = (
  pick: Pick,
  study: Study,
  findings: readonly Finding[]
): TagView | null => {
  const common = {
    key: `${pick.kind} ${pick.id}`,
    findings: findingsOf(pick, study, findings),
    wire: null,
    terminalLabel: null,
    leads: null,
    walk: null
  };
  if (pick.kind === 'wire') {
    const wire = study.document.wires[pick.id];
    const about = study.wires.get(pick.id);
    if (wire === undefined || about === undefined) return null;
    return {
      ...common,
      title: wire.number === '' ? 'no number' : wire.number,
      subtitle: `${study.index.labelOf(wire.from)} to ${study.index.labelOf(wire.to)}`,
      facts: buildWireFacts(wire, about, study),
      wire
    };
  }
  if (pick.kind === 'part') {
    const part = study.index.partById.get(pick.id);
    if (part === undefined) return null;
    return {
      ...common,
      title: part.reference || part.kind,
      subtitle: part.type ?? part.value ?? '',
      facts: buildPartFacts(part, study),
      leads: leadsOfPart(part, study),
      walk: Object.keys(part.terminals).length === 0 ? null : { part: part.id }
    };
  }
  const entry = study.index.terminalByKey.get(pick.id);
  if (entry === undefined) return null;
  const label = terminalText(study.document, entry);
  return {
    ...common,
    title: label,
    subtitle: entry.part.function ?? '',
    facts: buildTerminalFacts(pick.id, study),
    terminalLabel: label,
    leads: leadsAt(pick.id, study),
    walk: { part: entry.part.id, terminal: entry.terminal.id }
  };
};
