// The sorts of part that can be placed: what each is called, what it is in the document, and which
// terminals it has when nobody says more. Sizes are those of the trade from memory; whoever has the
// part before him drags its terminals to where they are.
import type { PartKind, Terminal } from '#document/index.ts';

export interface PartSort {
  readonly id: string;
  readonly name: string;
  readonly kind: PartKind;
  /** Of its reference: "TS" for TS3. */
  readonly letters: string;
  /** Words that name it, the longest first. */
  readonly words: readonly string[];
  /** What the palette writes into the field. */
  readonly example: string;
  /** What may stand after its name: a number of terminals or their names, or a value. */
  readonly takes: 'terminals' | 'value' | 'type';
  /** How many terminals it has when nothing is said. */
  readonly count: number;
  readonly names?: readonly string[];
  readonly ending: NonNullable<Terminal['ending']>;
  /** It may hang by its two leads from other parts' terminals. */
  readonly hangs?: boolean;
  /** All of its terminals are on the metal. */
  readonly grounded?: boolean;
}

const sort = (
  id: string,
  name: string,
  kind: PartKind,
  letters: string,
  more: Partial<PartSort> & Pick<PartSort, 'words' | 'example'>
): PartSort => ({
  id,
  name,
  kind,
  letters,
  takes: 'terminals',
  count: 2,
  ending: 'solder lug',
  ...more
});

const twoLeads = { takes: 'value', count: 2, ending: 'lead', hangs: true } as const;

/** In the order of the palette. */
export const partSorts: readonly PartSort[] = [
  sort('socket', 'Socket', 'tube', 'V', {
    words: ['tube socket', 'socket', 'tube'],
    example: '6CG7',
    takes: 'type',
    ending: 'tube pin'
  }),
  sort('strip', 'Strip', 'terminal strip', 'TS', {
    words: ['terminal strip', 'tie strip', 'lug strip', 'strip'],
    example: 'strip 5',
    count: 5
  }),
  sort('resistor', 'Resistor', 'resistor', 'R', {
    words: ['resistor'],
    example: 'resistor 47k',
    ...twoLeads
  }),
  sort('capacitor', 'Capacitor', 'capacitor', 'C', {
    words: ['capacitor'],
    example: 'capacitor 0.01 uF',
    ...twoLeads
  }),
  sort('can', 'Filter can', 'capacitor', 'C', {
    words: ['filter can', 'can'],
    example: 'filter can 4',
    count: 4
  }),
  sort('transformer', 'Transformer', 'transformer', 'T', {
    words: ['transformer'],
    example: 'transformer 8',
    count: 8
  }),
  sort('coil', 'Coil', 'coil', 'L', {
    words: ['choke', 'coil'],
    example: 'coil',
    ...twoLeads
  }),
  sort('control', 'Control', 'control', 'R', {
    words: ['potentiometer', 'control'],
    example: 'control 1M',
    takes: 'value',
    count: 3
  }),
  sort('switch', 'Switch', 'switch', 'S', { words: ['switch'], example: 'switch 2' }),
  sort('plug', 'Plug', 'plug', 'P', {
    words: ['plug'],
    example: 'plug 8',
    count: 8,
    ending: 'plug pin'
  }),
  sort('jack', 'Jack', 'jack', 'J', { words: ['jack'], example: 'jack 8', count: 8 }),
  sort('fuse', 'Fuse', 'fuse', 'F', { words: ['fuse'], example: 'fuse 3 A', ...twoLeads }),
  sort('rectifier', 'Rectifier', 'rectifier', 'CR', {
    words: ['rectifier', 'diode'],
    example: 'rectifier',
    ...twoLeads
  }),
  sort('ground', 'Ground lug', 'ground lug', 'GND', {
    words: ['ground lug', 'ground'],
    example: 'ground lug',
    count: 1,
    grounded: true
  }),
  sort('board', 'Board', 'board', 'PB', {
    words: ['printed board', 'board'],
    example: 'board 12',
    count: 12,
    ending: 'pad'
  }),
  sort('yoke', 'Yoke', 'yoke', 'DY', { words: ['yoke'], example: 'yoke 4', count: 4 }),
  sort('picture tube', 'Picture tube', 'picture tube', 'V', {
    words: ['picture tube'],
    example: 'picture tube duodecal',
    takes: 'type',
    ending: 'tube pin'
  }),
  sort('cap', 'Top cap clip', 'clip', 'CL', {
    words: ['top cap clip', 'top cap', 'clip'],
    example: 'top cap clip',
    count: 1,
    ending: 'cap'
  }),
  sort('speaker', 'Speaker', 'speaker', 'LS', { words: ['speaker'], example: 'speaker' }),
  sort('lamp', 'Lamp', 'lamp', 'I', { words: ['pilot lamp', 'lamp'], example: 'lamp' }),
  sort('antenna', 'Antenna', 'antenna', 'ANT', {
    words: ['antenna'],
    example: 'antenna',
    ending: 'screw'
  }),
  sort('splice', 'Splice', 'splice', 'SPL', { words: ['splice'], example: 'splice', count: 1 }),
  sort('other', 'Anything else', 'other', 'A', { words: ['part'], example: 'part 4', count: 4 })
];

export const sortOfKind = (kind: string): PartSort | null =>
  partSorts.find((one) => one.kind === kind) ?? null;
