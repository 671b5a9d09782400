// A joint in mid-air with nothing over it.
import type { Wire } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import { cautionAtVolts } from '../cautions.ts';
import type { Finding, Rule, Severity } from '../finding.ts';
import { highVoltageV } from '../shortfall.ts';
import { eachTerminal, eachWire, inPieces } from '../pieces.ts';
import { partPlace, wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const spliceBare: Rule = {
  id: 'splice-bare',
  severity: 'danger',
  title: 'Splices without a sleeve',
  source: commonPractice,
  explain:
    'A splice hangs free and needs a sleeve. It is bare when no wire that ends at it has a sleeve written down for that end. From 1 kV it is a danger, from 60 V or where the volts are not known a fault, below that a note. A wire that is planned to be spliced in has to have a sleeve at the end that it is spliced at, and is a caution without. It passes with a sleeve written down for an end at the splice.',
  ...inPieces(eachTerminal(checkSplice), eachWire(checkPlan))
};

const touchV = 60;

const hasSleeve = (text: string | undefined): boolean =>
  text !== undefined && text !== '' && !/^(none|no|bare|-)$/i.test(text.trim());

function checkSplice(study: Study, entry: TerminalEntry): Finding[] {
  if (entry.part.kind !== 'splice') return [];
  const wires = study.index.wiresAt.get(entry.key) ?? [];
  const ends = wires.flatMap((wire) =>
    [wire.from, wire.to].filter((end) => study.index.findAt(end) === entry)
  );
  if (wires.length === 0 || ends.some((end) => hasSleeve(end.sleeve))) return [];
  const stresses = wires.map((wire) => study.wires.get(wire.id)?.stress ?? null);
  const known = stresses.filter((stress) => stress !== null);
  const volts = Math.max(0, ...known.map((stress) => stress.volts));
  const isSure = known.some((stress) => !stress.atLeast) || volts > touchV;
  const severity: Severity =
    volts >= highVoltageV ? 'danger' : volts > touchV || !isSure ? 'fault' : 'note';
  const carried = !isSure
    ? 'what it carries is not known'
    : `it stands at ${formatVolts(Math.round(volts))}`;
  return [
    {
      rule: 'splice-bare',
      severity,
      at: [partPlace(entry.part), ...wires.map((wire) => wirePlace(study, wire))],
      message: `The splice ${entry.part.reference} has no sleeve over it; ${carried}.`,
      source: commonPractice,
      fix: { words: 'Sleeve the joint, or move it to a lug.' },
      ...(severity === 'danger' ? { caution: cautionAtVolts(volts) } : {})
    }
  ];
}

function checkPlan(study: Study, wire: Wire): Finding[] {
  if (wire.planned.way !== 'splice in' || wire.state === 'checked') return [];
  if (hasSleeve(wire.from.sleeve) || hasSleeve(wire.to.sleeve)) return [];
  return [
    {
      rule: 'splice-bare',
      severity: 'caution',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} is to be spliced in, but no sleeve is planned for either end.`,
      source: commonPractice,
      fix: {
        words: 'Write down the sleeve at the end that is spliced, or run new wire from lug to lug.'
      }
    }
  ];
}
