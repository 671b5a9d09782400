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

/** True where one letter was left out, put in, struck wrongly or changed places with its neighbour. */
const isOneSlipAway = (typed: string, meant: string): boolean => {
  if (Math.abs(typed.length - meant.length) > 1) return false;
  let start = 0;
  while (start < typed.length && typed[start] === meant[start]) start += 1;
  const [rest, wanted] = [typed.slice(start), meant.slice(start)];
  return (
    rest === wanted.slice(1) ||
    rest.slice(1) === wanted ||
    rest.slice(1) === wanted.slice(1) ||
    (rest.slice(2) === wanted.slice(2) && rest[0] === wanted[1] && rest[1] === wanted[0])
  );
};

/** The text with each word that is one slip of a key away from one colour written so ("yelow" is "yellow",
 *  "grean/whte" "green/white"); null where that makes no colour, or the text is one already. */
export const nearestColour = (text: string): string | null => {
  if (text.length > 80 || parseColour(text)) return null;
  const meant = text.toLowerCase().replace(/[a-z]{4,}/g, (word) => {
    if (colourOfWord.has(word)) return word;
    const near = colourNames.filter((name) => name.length > 3 && isOneSlipAway(word, name));
    return near.length === 1 && near[0] !== undefined ? near[0] : word;
  });
  const parsed = parseColour(meant);
  return parsed && [formatColour(parsed), ...(parsed.tracer ? [parsed.tracer] : [])].join('/');
};

/** Why a text that is no colour known here was kept as it is, and which colour was perhaps meant; null for a
 *  colour that is known. Follows the text. */
export const unknownColourWords = (text: string): string | null => {
  if (parseColour(text)) return null;
  const near = nearestColour(text);
  return `is no colour known here: kept as written${near === null ? '' : `; if ${near} is meant, write ${near}`}`;
};

/** A colour in words: "red", "dark blue". The tracer stands apart. */
export const formatColour = ({ colour, shade }: ParsedColour): string =>
  shade === null ? colour : `${shade} ${colour}`;

/** How to show a colour that was written in words, or null where it is no colour we know. */
export const findColourHex = (text: string): string | null => {
  const parsed = parseColour(text);
  return parsed ? colourHexes[parsed.colour] : null;
};
