// The colours of the drawing for each paper it may lie on. The six wire inks were chosen so that any
// two are at least 15 apart (CIEDE2000) for normal sight and the three common deficiencies, and
// stand out 3:1 from paper and unit; a test holds them to it.
import type { ClassBand } from '#study/index.ts';

export const themeNames = ['light', 'dark', 'print'] as const;
export type ThemeName = (typeof themeNames)[number];

export interface Inks {
  readonly paper: string;
  /** Inside a unit's border. */
  readonly unit: string;
  readonly unitEdge: string;
  readonly ink: string;
  readonly softInk: string;
  readonly faintInk: string;
  /** Inside parts and number boxes. */
  readonly part: string;
  readonly spare: string;
  readonly bar: string;
  readonly accent: string;
  readonly casing: string;
  readonly casingEdge: string;
  /** Around the heaviest wires, so that they are seen first. */
  readonly halo: string;
  readonly wires: Readonly<Record<ClassBand, string>>;
  readonly danger: string;
  readonly dangerWash: string;
  readonly fault: string;
  readonly caution: string;
  readonly note: string;
  readonly onMark: string;
}

const dayWires: Inks['wires'] = {
  '300': '#75839b',
  '600': '#3f1cb1',
  '1k-3k': '#007764',
  '5k-15k': '#a67b1b',
  '20k+': '#99201c',
  'not known': '#1b222b'
};

const light: Inks = {
  paper: '#faf7f0',
  unit: '#f1ecdf',
  unitEdge: '#b9ad90',
  ink: '#20242a',
  softInk: '#55534d',
  faintInk: '#6b675f',
  part: '#fffdf8',
  spare: '#a39d90',
  bar: '#d9cba8',
  accent: '#0e5a63',
  casing: '#fffdf8',
  casingEdge: '#6f7a80',
  halo: '#f0cdc4',
  wires: dayWires,
  danger: '#9a031b',
  dangerWash: '#fbf1ee',
  fault: '#8a4f00',
  caution: '#6a5a12',
  note: '#49606b',
  onMark: '#ffffff'
};

const dark: Inks = {
  paper: '#191713',
  unit: '#23201a',
  unitEdge: '#5a5242',
  ink: '#ece5d6',
  softInk: '#b9b09f',
  faintInk: '#a39a89',
  part: '#2f2b23',
  spare: '#7a7264',
  bar: '#5b5036',
  accent: '#7cc7c9',
  casing: '#191713',
  casingEdge: '#93a0a6',
  halo: '#5a2422',
  wires: {
    '300': '#acb5ce',
    '600': '#6981fb',
    '1k-3k': '#5dba94',
    '5k-15k': '#e1bc52',
    '20k+': '#ff5951',
    'not known': '#f6f0e2'
  },
  danger: '#ff9a94',
  dangerWash: '#2e1a17',
  fault: '#eab068',
  caution: '#d3c06a',
  note: '#a4bac5',
  onMark: '#1a1410'
};

/** For paper: white, no tints that cost ink. */
const print: Inks = {
  ...light,
  paper: '#ffffff',
  unit: '#ffffff',
  unitEdge: '#8d8a83',
  part: '#ffffff',
  bar: '#e4dfd2',
  casing: '#ffffff',
  halo: '#f3d9d3',
  dangerWash: '#ffffff'
};

/** Colours by theme. */
export const inks: Readonly<Record<ThemeName, Inks>> = { light, dark, print };

const black = '#000000';
const white = '#ffffff';

/** One ink on white: dash and width alone tell the classes apart, as on a photocopy. */
export const blackInks: Inks = {
  paper: white,
  unit: white,
  unitEdge: black,
  ink: black,
  softInk: black,
  faintInk: black,
  part: white,
  spare: black,
  bar: white,
  accent: black,
  casing: white,
  casingEdge: black,
  halo: white,
  wires: {
    '300': black,
    '600': black,
    '1k-3k': black,
    '5k-15k': black,
    '20k+': black,
    'not known': black
  },
  danger: black,
  dangerWash: white,
  fault: black,
  caution: black,
  note: black,
  onMark: white
};
