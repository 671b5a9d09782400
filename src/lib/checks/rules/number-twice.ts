// Two wires bear one number: a tag would lead to either.
import type { Edit, Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { wirePlace } from '../places.ts';
import { commonPractice, listed } from '../words.ts';

export const numberTwice: Rule = {
  id: 'number-twice',
  severity: 'fault',
  title: 'One number on two wires',
  source: commonPractice,
  explain:
    'The number is what stands on the tag, so it must lead to one wire. Numbers are compared without blanks around them and without regard to capitals; wires without a number are left out. The fix keeps the number on the first wire and gives the others the next free ones. It passes when each number is on one wire only.',
  check: (study) => {
    const byNumber = new Map<string, Wire[]>();
    for (const wire of study.index.wires) {
      const number = plain(wire.number);
      if (number === '') continue;
      const known = byNumber.get(number);
      if (known) known.push(wire);
      else byNumber.set(number, [wire]);
    }
    return [...byNumber.values()]
      .filter((wires) => wires.length > 1)
      .map((wires) => findingOf(study, wires));
  }
};

const plain = (number: string): string => number.trim().toLowerCase();

function findingOf(study: Study, wires: readonly Wire[]): Finding {
  const ways = wires.map((wire) => waysWords(study, wire));
  const [first, ...others] = wires;
  return {
    rule: 'number-twice',
    severity: 'fault',
    // Their number alone would not tell them apart.
    at: wires.map((wire, index) => ({
      ...wirePlace(study, wire),
      label: `wire ${wire.number.trim()}, ${ways[index] ?? ''}`
    })),
    message: `Number ${first?.number.trim() ?? ''} stands on ${wires.length} wires: ${listed(ways, 6)}.`,
    source: commonPractice,
    ...(first === undefined ? {} : { fix: renumber(study, first, others) })
  };
}

const waysWords = ({ index }: Study, { from, to }: Wire): string =>
  `${index.labelOf(from)} to ${index.labelOf(to)}`;

function renumber(
  study: Study,
  first: Wire,
  wires: readonly Wire[]
): { words: string; edit: Edit } {
  let next = highestNumber(study.index.wires);
  const edits: Edit[] = [];
  const gifts: string[] = [];
  for (const wire of wires) {
    next += 1;
    gifts.push(`${waysWords(study, wire)} the number ${next}`);
    const fields = { number: String(next) };
    edits.push({ kind: 'change-wire', args: { id: wire.id, fields } });
  }
  const [only] = edits;
  const words = `Keep ${first.number.trim()} on the wire from ${waysWords(study, first)}; give ${listed(gifts, 6)}.`;
  const name = 'Give wires their own numbers';
  const edit: Edit = edits.length === 1 && only ? only : { kind: 'do-many', args: { name, edits } };
  return { words, edit };
}

/** The highest whole number on any wire; numbers like "12a" count by their digits. */
function highestNumber(wires: readonly Wire[]): number {
  let highest = 0;
  for (const { number } of wires) {
    const value = Number(/^\D*(\d{1,9})\D*$/.exec(number.trim())?.[1] ?? 0);
    if (value > highest) highest = value;
  }
  return highest;
}
