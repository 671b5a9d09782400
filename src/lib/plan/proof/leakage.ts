// Leakage of metal that a person can touch, with the plug both ways round.
import type { Study } from '#study/index.ts';
import { formatQuantity, parseQuantity } from '#quantity/index.ts';
import type { Expectation } from './expectation.ts';
import type { TestRow, TestSheet } from './test-row.ts';

/** What is written down as the limit decides; none is given from here. */
export const limitRecord = 'limit of the service data';

/** A current, or volts over the measuring network, as it was written down; null where nothing is, or it
 *  cannot be read. */
function expectationOf({ document }: Study): Expectation | null {
  const text = document.proof?.records?.['leakage']?.[limitRecord] ?? '';
  for (const dimension of ['current', 'voltage'] as const) {
    const limit = parseQuantity(text, dimension);
    if (limit.ok && limit.value > 0 && /[av]/i.test(text))
      return {
        dimension,
        least: null,
        most: limit.value,
        words: `${formatQuantity(limit.value, dimension)} at most`,
        basis: 'as written down from the service data'
      };
  }
  return null;
}

export function leakageSheet(study: Study): TestSheet {
  const metals = exposed(study);
  const expected = expectationOf(study);
  const ways = [
    'plug one way, switch on',
    'plug one way, switch off',
    'plug the other way, switch on',
    'plug the other way, switch off'
  ];
  return {
    id: 'leakage',
    title: 'Leakage of exposed metal',
    before: [
      'Everything discharged; the set closed as far as it will be in use.',
      'This is made on the line as the set will be used: one hand, nothing else in reach that is grounded, and only if you are competent to.',
      'Plug both ways, switch on and off, with an antenna terminal and every screw that a finger reaches.',
      'Limits and the measuring network are those of the service data and of your local codes.'
    ],
    limits: ['A low reading today does not say that the set is safe.'],
    record: [
      'line volts',
      'meter or network, and its type',
      limitRecord,
      'where the limit comes from',
      'date'
    ],
    rows: metals.flatMap(({ id, name }) =>
      ways.map((way): TestRow => ({
        id: `leakage ${id} ${way}`,
        what: name,
        where: way,
        expected,
        words:
          expected?.words ??
          'below the limit of the service data; where it gives none, ask your local codes',
        doNotMeasure: false,
        note: null
      }))
    )
  };
}

function exposed({ document, index }: Study): readonly { id: string; name: string }[] {
  const units = Object.values(document.units)
    .filter(({ metal }) => metal !== 'none')
    .map(({ id, name, metal }) => ({
      id,
      name: metal === 'apart' ? `${name}, metal that stands apart` : `${name}, metal`
    }));
  const parts = index.parts
    .filter(({ kind }) => kind === 'control' || kind === 'antenna' || kind === 'switch')
    .map(({ id, reference, kind }) => ({
      id,
      name: kind === 'antenna' ? `${reference}, terminals` : `${reference}, shaft and bushing`
    }));
  return [...units, ...parts];
}
