// Colours of wire insulation as the trade writes them: "red/yel", "GRN-WHT", "slate w/ red tracer".

export const colourNames = [
  'black',
  'brown',
  'red',
  'orange',
  'yellow',
  'green',
  'blue',
  'violet',
  'gray',
  'white',
  'pink',
  'tan',
  'turquoise',
  'natural',
  'clear'
] as const;
export type ColourName = (typeof colourNames)[number];

/** How each colour is shown on a screen or on paper, as hexadecimal red, green, blue. */
export const colourHexes: Readonly<Record<ColourName, string>> = {
  black: '#23211f',
  brown: '#7a4a26',
  red: '#c8322b',
  orange: '#e07a1f',
  yellow: '#e8c22e',
  green: '#3a8a4a',
  blue: '#2f66b5',
  violet: '#7b4a9e',
  gray: '#8b9096',
  white: '#f4f2ec',
  pink: '#e59aae',
  tan: '#c9a878',
  turquoise: '#3fb0ac',
  natural: '#ddcfae',
  clear: '#e6e9ea'
};

// Names and abbreviations in use. Single letters are read only where no second colour begins so.
const words: Readonly<Record<ColourName, string>> = {
  black: 'black blk bk blck',
  brown: 'brown brn br bn brwn',
  red: 'red rd r',
  orange: 'orange orn org or og orng oran o',
  yellow: 'yellow yel yl yw ylw ye yell y',
  green: 'green grn gn',
  blue: 'blue blu bu',
  violet: 'violet vio vi vlt purple pur purp ppl prpl vt v',
  gray: 'gray grey gry gy slate slt sl',
  white: 'white wht wh whte w',
  pink: 'pink pnk pk',
  tan: 'tan tn beige',
  turquoise: 'turquoise tq turq aqua',
  natural: 'natural nat cream ivory buff',
  clear: 'clear clr transparent'
};

const colourOfWord: ReadonlyMap<string, ColourName> = new Map(
  colourNames.flatMap((name) => words[name].split(' ').map((word) => [word, name] as const))
);

export interface ParsedColour {
  readonly colour: ColourName;
  readonly tracer: ColourName | null;
  /** "dark red", "lt blue": the shade that was written before the colour. */
  readonly shade: 'dark' | 'light' | null;
}

const shades: Readonly<Record<string, 'dark' | 'light'>> = {
  dark: 'dark',
  dk: 'dark',
  light: 'light',
  lt: 'light',
  pale: 'light'
};
// Words between or around two colours that say no more than "and a tracer".
const joiners = new Set(
  'with w/ w and & on tracer tr stripe stripes striped str trace band spiral a'.split(' ')
);

/** The colour and tracer that a text means, or null where any word of it is not understood.
 *  "wht/red" is white with a red tracer: the first colour is the insulation. */
export const parseColour = (text: string): ParsedColour | null => {
  const pieces = text
    .slice(0, 80)
    .toLowerCase()
    .replace(/(\S\s+)w\//g, '$1 with ')
    .split(/[\s/\-+,;_()]+/)
    .filter((piece) => piece !== '');
  const found: ColourName[] = [];
  let shade: ParsedColour['shade'] = null;
  for (const [index, piece] of pieces.entries()) {
    const word = piece.replace(/\.$/, '');
    // A lone "w" between two colours joins them; elsewhere it is white.
    const isJoiner =
      joiners.has(word) &&
      (word !== 'w' || (index > 0 && index < pieces.length - 1 && pieces.length > 2));
    const colour = isJoiner ? undefined : colourOfWord.get(word);
    if (colour) found.push(colour);
    else if (shades[word] && found.length === 0) shade = shades[word];
    else if (!isJoiner) return null;
  }
  const [colour, tracer] = found;
  if (!colour || found.length > 2) return null;
  return { colour, tracer: tracer ?? null, shade };
};

/** A colour in words: "red", "dark blue". The tracer stands apart. */
export const formatColour = ({ colour, shade }: ParsedColour): string =>
  shade === null ? colour : `${shade} ${colour}`;

/** How to show a colour that was written in words, or null where it is no colour we know. */
export const findColourHex = (text: string): string | null => {
  const parsed = parseColour(text);
  return parsed ? colourHexes[parsed.colour] : null;
};
