// Metal that should be at the chassis and is not: a separate unit, the coating of a picture tube.
import type { Part, Unit } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import { cautionOf } from '../cautions.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachTerminal, inPieces, wholeChassis } from '../pieces.ts';
import { terminalPlace } from '../places.ts';
import { commonPractice } from '../words.ts';

export const noGround: Rule = {
  id: 'no-ground',
  severity: 'danger',
  title: 'Metal and coatings that nothing grounds',
  source: commonPractice,
  explain:
    'The outer coating of a picture tube is one plate of the high-voltage filter: left ungrounded it charges to kilovolts, a danger. The metal of a unit that stands apart from the main chassis floats when no wire, braid or lead connects it: a caution, where the document has a main chassis at all. A terminal that is marked as grounded in a unit without metal is a note. It passes when a connection to the chassis is recorded.',
  ...inPieces(
    wholeChassis(
      (study) => [
        ...study.index.parts.flatMap((part) => checkCoating(study, part)),
        ...Object.values(study.document.units).flatMap((unit) => checkUnit(study, unit))
      ],
      ({ index, document, nets, netOf }) => [index.terminals, document.units, nets, netOf]
    ),
    eachTerminal(checkTerminal)
  )
};

const isOnChassis = (study: Study, key: string): boolean =>
  study.nets.get(study.netOf.get(key) ?? '')?.isChassis === true;

const hasMainChassis = (study: Study): boolean =>
  Object.values(study.document.units).some((unit) => unit.metal === 'bonded');

function checkCoating(study: Study, part: Part): Finding[] {
  if (part.kind !== 'picture tube' || !hasMainChassis(study)) return [];
  return study.index.terminals
    .filter((entry) => entry.part === part && /coating|aquadag|\bdag\b/i.test(entry.terminal.name))
    .filter((entry) => !isOnChassis(study, entry.key))
    .map((entry): Finding => ({
      rule: 'no-ground',
      severity: 'danger',
      at: [terminalPlace(study, entry)],
      message: `The outer coating of the picture tube ${part.reference} is not connected to the chassis: it charges to kilovolts.`,
      source: commonPractice,
      fix: { words: 'Record or fit the spring or braid that grounds it.' },
      caution: cautionOf('stored-charge').short
    }));
}

function checkUnit(study: Study, unit: Unit): Finding[] {
  if (unit.metal !== 'apart' || !hasMainChassis(study)) return [];
  const onMetal = study.index.terminals.filter(
    ({ part, terminal }) =>
      part.unit === unit.id && (terminal.grounded === true || part.kind === 'ground lug')
  );
  const [first] = onMetal;
  if (!first || onMetal.some((entry) => isOnChassis(study, entry.key))) return [];
  return [
    {
      rule: 'no-ground',
      severity: 'caution',
      at: [{ kind: 'unit', id: unit.id, label: unit.name }, terminalPlace(study, first)],
      message: `The metal of ${unit.name} is connected to nothing that leads to the chassis: it floats.`,
      source: commonPractice,
      fix: {
        words:
          'Record the braid or wire that grounds it, or mark the unit as bonded where it is screwed on.'
      }
    }
  ];
}

function checkTerminal(study: Study, entry: TerminalEntry): Finding[] {
  const { part, terminal } = entry;
  const unit = findElement(study.document.units, part.unit);
  if (terminal.grounded !== true || unit?.metal !== 'none') return [];
  const place = terminalPlace(study, entry);
  return [
    {
      rule: 'no-ground',
      severity: 'note',
      at: [place],
      message: `${place.label} is marked as grounded, but ${unit.name} has no metal to be grounded to.`,
      source: commonPractice,
      fix: { words: 'Take the mark away, or say what metal the unit has.' }
    }
  ];
}
