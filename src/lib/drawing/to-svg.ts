// Writes a display list as SVG: real text, a group with id and title for every element of the
// document, no script and no style block, so that every program draws it alike.
import { dataUri } from './data-uri.ts';
import type { DisplayItem, DisplayList, PictureAsset, Shape, Subject } from './display-list.ts';
import { pictureFrame } from './picture-corners.ts';
import { styleOf, type PaperTheme, type Style } from './styles.ts';
import { escapeXmlText } from './xml-text.ts';

export interface SvgOptions {
  readonly theme?: PaperTheme;
  /** What the drawing is called, for those who cannot see it. */
  readonly title: string;
  readonly description?: string;
  /** A `<metadata>` element, ready as markup; the document's own writer makes it. */
  readonly metadata?: string;
  /** The pixels of a picture as they are to be shown, to be carried inside the file. Without it, or where
   *  it gives none, a frame with the photo's name stands for the picture. */
  readonly pictures?: (asset: PictureAsset) => PictureFile | undefined;
}

export interface PictureFile {
  readonly bytes: Uint8Array;
  readonly type: string;
}

/** Faces with substitutes of about the same widths. The first is said once, at the top. */
const families = {
  sans: 'IBM Plex Sans, Liberation Sans, Arial, Helvetica, sans-serif',
  mono: 'IBM Plex Mono, Liberation Mono, DejaVu Sans Mono, Consolas, monospace'
} as const;

/** Hundredths of a millimetre: finer than any printer. */
const number = (value: number): string => String(Math.round(value * 100) / 100 + 0);

const attributes = (pairs: Readonly<Record<string, string | number | undefined>>): string =>
  Object.entries(pairs)
    .filter(([, value]) => value !== undefined)
    .map(
      ([name, value]) =>
        ` ${name}="${typeof value === 'number' ? number(value) : escapeXmlText(value ?? '')}"`
    )
    .join('');

/** A polyline with its corners rounded, as path data. */
export const roundedPath = (points: readonly number[], closed: boolean, round: number): string => {
  const spots: [number, number][] = [];
  for (let index = 0; index + 1 < points.length; index += 2) {
    spots.push([points[index] ?? 0, points[index + 1] ?? 0]);
  }
  const [first] = spots;
  if (!first) return '';
  const commands = [`M${number(first[0])} ${number(first[1])}`];
  const corner = (
    before: [number, number],
    at: [number, number],
    after: [number, number]
  ): void => {
    const back = Math.hypot(at[0] - before[0], at[1] - before[1]);
    const on = Math.hypot(after[0] - at[0], after[1] - at[1]);
    const r = Math.min(round, back / 2, on / 2);
    if (r < 0.02) {
      commands.push(`L${number(at[0])} ${number(at[1])}`);
      return;
    }
    const towards = (from: [number, number], to: [number, number], long: number): string =>
      `${number(to[0] + ((from[0] - to[0]) * r) / long)} ${number(to[1] + ((from[1] - to[1]) * r) / long)}`;
    commands.push(
      `L${towards(before, at, back)}`,
      `Q${number(at[0])} ${number(at[1])} ${towards(after, at, on)}`
    );
  };
  for (let index = 1; index < spots.length; index++) {
    const [before, at, after] = [spots[index - 1], spots[index], spots[index + 1]];
    if (!before || !at) continue;
    if (after && round > 0) corner(before, at, after);
    else commands.push(`L${number(at[0])} ${number(at[1])}`);
  }
  if (closed) commands.push('Z');
  return commands.join('');
};

const lookOf = ({
  stroke,
  fill,
  width,
  dash,
  cap
}: Style): Record<string, string | number | undefined> => ({
  fill: fill ?? 'none',
  stroke: stroke,
  'stroke-width': stroke === undefined ? undefined : width,
  'stroke-dasharray': dash?.map(number).join(' '),
  'stroke-linecap': cap,
  'stroke-linejoin': stroke === undefined ? undefined : 'round'
});

interface Paper {
  readonly theme: PaperTheme;
  readonly pictures: NonNullable<SvgOptions['pictures']>;
}

type PictureShape = Extract<Shape, { kind: 'picture' }>;

/** Six digits: a turn of a large picture must not show. */
const matrixText = (matrix: PictureShape['matrix']): string =>
  `matrix(${matrix.map((value) => Number(value.toFixed(6)) + 0).join(' ')})`;

const pictureMarkup = (id: string, shape: PictureShape, paper: Paper): string => {
  const file = paper.pictures(shape.asset);
  if (file === undefined) {
    return pictureFrame(shape)
      .map((part) => shapeMarkup(id, part.shape, styleOf(part.style, paper.theme), paper))
      .join('');
  }
  const { matrix, width, height, opacity, clip } = shape;
  const clipId = `clip-${id}`;
  const edge =
    clip === undefined
      ? ''
      : `<clipPath${attributes({ id: clipId })}><polygon${attributes({ points: clip.map(number).join(' ') })}/></clipPath>`;
  return `${edge}<image${attributes({
    width,
    height,
    preserveAspectRatio: 'none',
    transform: matrixText(matrix),
    opacity: opacity === 1 ? undefined : opacity,
    'clip-path': clip === undefined ? undefined : `url(#${clipId})`,
    href: dataUri(file.bytes, file.type)
  })}/>`;
};

const shapeMarkup = (id: string, shape: Shape, style: Style, paper: Paper): string => {
  const look = lookOf(style);
  switch (shape.kind) {
    case 'line': {
      const { points, closed = false, round = 0 } = shape;
      const filled = closed ? look : { ...look, fill: 'none' };
      if (round > 0)
        return `<path${attributes({ d: roundedPath(points, closed, round), ...filled })}/>`;
      const list = points.map(number).join(' ');
      return `<${closed ? 'polygon' : 'polyline'}${attributes({ points: list, ...filled })}/>`;
    }
    case 'circle':
      return `<circle${attributes({ cx: shape.x, cy: shape.y, r: shape.r, ...look })}/>`;
    case 'box': {
      const { x, y, width, height, round } = shape;
      return `<rect${attributes({ x, y, width, height, rx: round, ...look })}/>`;
    }
    case 'picture':
      return pictureMarkup(id, shape, paper);
    case 'text': {
      const { x, y, text, size, anchor, face, bold, turn } = shape;
      const place =
        turn === undefined ? undefined : `rotate(${number(turn)} ${number(x)} ${number(y)})`;
      return `<text${attributes({
        x,
        y,
        'font-family': face === 'mono' ? families.mono : undefined,
        'font-size': size,
        'font-weight': bold ? 600 : undefined,
        'text-anchor': anchor === 'start' ? undefined : anchor,
        fill: style.fill ?? style.stroke,
        transform: place
      })}>${escapeXmlText(text)}</text>`;
    }
  }
};

const groupId = ({ kind, id }: Subject): string => `${kind}-${id.replace(/[^\w.-]/g, '-')}`;

interface Group {
  readonly subject: Subject | undefined;
  readonly items: DisplayItem[];
}

/** Neighbours in painting order that stand for the same thing share a group. */
const groupItems = (items: readonly DisplayItem[]): Group[] => {
  const groups: Group[] = [];
  for (const item of items) {
    const last = groups.at(-1);
    const isSame =
      last && last.subject?.kind === item.subject?.kind && last.subject?.id === item.subject?.id;
    if (isSame) last.items.push(item);
    else groups.push({ subject: item.subject, items: [item] });
  }
  return groups;
};

const groupMarkup = (
  { subject, items }: Group,
  seen: Map<string, number>,
  paper: Paper
): string => {
  const shapes = items
    .map(({ id, shape, style }) => shapeMarkup(id, shape, styleOf(style, paper.theme), paper))
    .join('');
  if (!subject) return shapes;
  const base = groupId(subject);
  const turn = (seen.get(base) ?? 0) + 1;
  seen.set(base, turn);
  const id = turn === 1 ? base : `${base}_${turn}`;
  const title = items.find((item) => item.title)?.title;
  const words = title === undefined ? '' : `<title>${escapeXmlText(title)}</title>`;
  return `<g${attributes({ id, class: subject.kind })}>${words}${shapes}</g>`;
};

/** The drawing as SVG text, in millimetres. */
export const toSvg = (list: DisplayList, options: SvgOptions): string => {
  const { theme = 'light', title, description, metadata = '' } = options;
  const paper = { theme, pictures: options.pictures ?? (() => undefined) };
  const { x, y, width, height } = list.bounds;
  const seen = new Map<string, number>();
  const byLayer = new Map<string, DisplayItem[]>();
  for (const item of list.items) {
    const known = byLayer.get(item.layer);
    if (known) known.push(item);
    else byLayer.set(item.layer, [item]);
  }
  const body = [...byLayer].map(
    ([layer, items]) =>
      `<g id="layer-${layer}">\n${groupItems(items)
        .map((group) => groupMarkup(group, seen, paper))
        .join('\n')}\n</g>`
  );
  const head = attributes({
    xmlns: 'http://www.w3.org/2000/svg',
    width: `${number(width)}mm`,
    height: `${number(height)}mm`,
    viewBox: [x, y, width, height].map(number).join(' '),
    'font-family': families.sans,
    role: 'img',
    'aria-labelledby': 'drawing-title drawing-description'
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg${head}>`,
    `<title id="drawing-title">${escapeXmlText(title)}</title>`,
    `<desc id="drawing-description">${escapeXmlText(description ?? title)}</desc>`,
    ...(metadata === '' ? [] : [metadata]),
    ...body,
    '</svg>',
    ''
  ].join('\n');
};
