// What a club wants to know of a set before anything else: which set it is, how leads are dressed, what was
// measured and how, what earlier hands did, where the published data is wrong.
import type { Finding } from '#checks/index.ts';
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';

export interface FactGroup {
  readonly title: (typeof clubTitles)[number];
  /** A sentence or a pair of words each. */
  readonly items: readonly string[];
}

const about = (study: Study, wire: Wire): string =>
  `wire ${wire.number}, ${study.index.labelOf(wire.from)} to ${study.index.labelOf(wire.to)}`;

const criticalWords = ({ critical }: Wire): string =>
  [
    critical?.keepLength === true ? 'keep its length' : '',
    critical?.keepPlace === true ? 'keep its place' : '',
    critical?.keepShort === true ? 'keep it short' : ''
  ]
    .filter((words) => words !== '')
    .join(', ');

const dressOf = (study: Study): string[] =>
  study.index.wires.flatMap((wire) => {
    const words = [wire.dress ?? '', criticalWords(wire)].filter((part) => part !== '');
    return words.length === 0 ? [] : [`${about(study, wire)}: ${words.join('; ')}`];
  });

const ofOrigin = (study: Study, origin: NonNullable<Wire['origin']>): string[] =>
  study.index.wires
    .filter((wire) => wire.origin === origin)
    .map((wire) => {
      const notes = [wire.found.notes, wire.notes].filter(
        (text) => text !== undefined && text !== ''
      );
      return `${about(study, wire)}${notes.length === 0 ? '' : `: ${notes.join('; ')}`}`;
    });

const identityOf = ({ identity }: Study['document']): string[] =>
  (
    [
      ['set', identity.set],
      ['chassis', identity.chassis],
      ['run', identity.run],
      ['tubes', identity.tubes],
      ['service data', identity.dataReference],
      ['traced by', identity.tracedBy],
      [
        'checked on',
        identity.setsChecked === undefined
          ? undefined
          : `${identity.setsChecked} ${identity.setsChecked === 1 ? 'set' : 'sets'}`
      ],
      ['licence of the drawing', identity.licence],
      ['notes', identity.notes]
    ] as const
  ).flatMap(([label, value]) =>
    value === undefined || value === '' ? [] : [`${label}: ${value}`]
  );

const measured = ({ document: { proof } }: Study): string[] =>
  Object.entries(proof?.records ?? {}).flatMap(([sheet, records]) =>
    Object.entries(records).map(
      ([what, value]) => `${sheet.replaceAll('-', ' ')}, ${what}: ${value}`
    )
  );

/** What may have something to say, in the order in which it is wanted. */
export const clubTitles = [
  'Which set',
  'Lead dress',
  'Photos',
  'What was measured, and how',
  'Production changes and modifications',
  'Where the published data and the set disagree',
  'Earlier repairs'
] as const;

/** The groups that have something to say, in the order in which they are wanted. */
export const buildClubFacts = (study: Study, findings: readonly Finding[]): FactGroup[] => {
  const readings = Object.keys(study.document.proof?.readings ?? {}).length;
  const photos = Object.values(study.document.photos).map(({ name }) => name || 'photo');
  const groups: FactGroup[] = [
    { title: 'Which set', items: identityOf(study.document) },
    { title: 'Lead dress', items: dressOf(study) },
    { title: 'Photos', items: photos },
    {
      title: 'What was measured, and how',
      items: [
        ...measured(study),
        ...(readings > 0 ? [`${readings} ${readings === 1 ? 'reading' : 'readings'}`] : [])
      ]
    },
    { title: 'Production changes and modifications', items: ofOrigin(study, 'modification') },
    {
      title: 'Where the published data and the set disagree',
      items: findings.filter(({ rule }) => rule === 'data-disagrees').map(({ message }) => message)
    },
    { title: 'Earlier repairs', items: ofOrigin(study, 'earlier repair') }
  ];
  return groups.filter(({ items }) => items.length > 0);
};

/** A word for whoever shares pictures of service data. */
export const copyrightWord =
  'Scans of service data usually belong to whoever published them. Share your own photos and readings, and name the data that you used instead of copying it, unless you may.';
