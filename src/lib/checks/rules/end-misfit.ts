// A conductor that does not suit the terminal it ends at, or a terminal with more than it can hold.
import { findTubeBase, findTubeType, tubeBaseOf } from '#handbook/index.ts';
import type { Wire, WireEnd } from '#document/index.ts';
import { hasWrapTurns } from '#physics/post-wrap.ts';
import { formatAwg } from '#quantity/index.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachTerminal, eachWire, inPieces } from '../pieces.ts';
import { terminalPlace, wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const endMisfit: Rule = {
  id: 'end-misfit',
  severity: 'fault',
  title: 'Ends that do not suit their terminal',
  source: commonPractice,
  explain:
    'A wrapped post takes solid wire of 30 to 16 AWG; stranded wire, or another gauge, that is planned to be wrapped on one is a fault. A post takes three wraps, a tube pin four leads, a solder lug six; more than that is a note, and wires and leads of components count alike. A wire or lead at a pin number that the base of the tube does not have is a caution: the number or the type was written down wrongly. It passes with solid wire, another ending, a part of the leads moved to another lug, or the number put right.',
  ...inPieces(eachWire(checkWraps), eachTerminal(checkCrowd), eachTerminal(checkPin))
};

function checkWraps(study: Study, wire: Wire): Finding[] {
  const { planned } = wire;
  if (planned.way === 'keep') return [];
  return [wire.from, wire.to]
    .filter((end) => isWrapped(study, end))
    .flatMap((end): Finding[] => {
      const stranded = planned.stranding === 'stranded';
      const { awg } = planned;
      const unfit = stranded
        ? 'stranded wire'
        : awg !== undefined && !hasWrapTurns(awg)
          ? formatAwg(awg)
          : null;
      if (unfit === null) return [];
      return [
        {
          rule: 'end-misfit',
          severity: 'fault',
          at: [wirePlace(study, wire)],
          message: `${wiresAsSubject(study, [wire])} is planned in ${unfit}, but ${study.index.labelOf(end)} is a wrapped post, which takes solid wire of 30 to 16 AWG.`,
          source: commonPractice,
          fix: { words: 'Plan solid wire, or solder it.' }
        }
      ];
    });
}

function isWrapped(study: Study, end: WireEnd): boolean {
  const isPost = study.index.findAt(end)?.terminal.ending === 'wrap post';
  return isPost && (end.termination === undefined || /wrap/i.test(end.termination));
}

/** How many leads each kind of terminal holds well. */
const room: ReadonlyMap<string, number> = new Map([
  ['wrap post', 3],
  ['tube pin', 4],
  ['solder lug', 6]
]);

function checkCrowd(study: Study, entry: TerminalEntry): Finding[] {
  const most = room.get(entry.terminal.ending ?? '');
  if (most === undefined || entry.part.kind === 'ground lug') return [];
  const wires = study.index.wiresAt.get(entry.key)?.length ?? 0;
  const leads = study.index.leadsOn.get(entry.key)?.length ?? 0;
  if (wires + leads <= most) return [];
  const place = terminalPlace(study, entry);
  return [
    {
      rule: 'end-misfit',
      severity: 'note',
      at: [place],
      message: `${place.label} holds ${wires + leads} leads (${wires} wires, ${leads} of components); a ${entry.terminal.ending ?? ''} holds ${most} well.`,
      source: commonPractice,
      fix: { words: 'Move some of them to another lug of the same net.' }
    }
  ];
}

function checkPin(study: Study, entry: TerminalEntry): Finding[] {
  const { part, terminal, key } = entry;
  if (!/tube$/.test(part.kind) || part.type === undefined || !/^\d+$/.test(terminal.name))
    return [];
  const tube = findTubeType(part.type);
  const base = tube ? tubeBaseOf(tube.base) : findTubeBase(part.type);
  const pin = Number(terminal.name);
  if (!base || (pin >= 1 && pin <= base.pins)) return [];
  const isUsed = study.index.wiresAt.has(key) || study.index.leadsOn.has(key);
  if (!isUsed) return [];
  return [
    {
      rule: 'end-misfit',
      severity: 'caution',
      at: [terminalPlace(study, entry)],
      message: `${part.reference} (${part.type}) has pins 1 to ${base.pins}; there is no pin ${terminal.name}.`,
      source: 'the tube and base tables of this program, each row with its source',
      fix: { words: 'Count the pins at the socket again, or put the type right.' }
    }
  ];
}
