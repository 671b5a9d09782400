// Terminals as they are seen from the wiring side: rings with their numbers, tabs of a strip, leads
// that come out of a core, caps; a terminal that is joined to the metal is filled.
import type { Id, Terminal } from '#document/index.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import type { Spot } from '../presentation/sides.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import { exitsOf } from './exits.ts';
import { isLevelRow } from './outlines.ts';
import type { PartPen } from './part-pen.ts';
import type { PlacedPart } from './placed-part.ts';
import { splitPins } from './terminal-offsets.ts';

/** Radius of a terminal's ring, mm. */
export const ringMm = 1.5;
const dotMm = 0.85;
const capMm = 2.3;
const nameLook = { size: typeSizes.pin, face: 'mono' } as const;
/** The widest name beside a lead: leads of a core stand 9 mm apart. */
const widestNameMm = 8.6;

export interface TerminalUse {
  /** Terminals that a wire or a lead ends at. */
  readonly used: ReadonlySet<Id>;
}

const fitsInRing = (name: string): boolean => textWidthMm(name, nameLook) <= 2 * ringMm - 0.5;

const styleFor = ({ id, grounded }: Terminal, { used }: TerminalUse): string =>
  grounded ? 'part.foot' : used.has(id) ? 'part.pin' : 'part.pin.spare';

const nameStyle = ({ id, grounded }: Terminal, { used }: TerminalUse): string =>
  grounded || used.has(id) ? 'part.pin.name' : 'part.pin.name.spare';

function drawRing(
  pen: PartPen,
  terminal: Terminal,
  at: Spot,
  use: TerminalUse,
  inward: Spot
): void {
  const marks = { terminal: terminal.id, layer: 'terminals' } as const;
  if (fitsInRing(terminal.name)) {
    pen.circle(styleFor(terminal, use), at, ringMm, marks);
    pen.text(nameStyle(terminal, use), terminal.name, at, { ...nameLook, ...marks });
    return;
  }
  pen.circle(styleFor(terminal, use), at, 1.1, marks);
  drawNameBeside(pen, terminal, at, use, inward, 1.1);
}

/** A name that is too long for its ring stands on the part, beside it. */
function drawNameBeside(
  pen: PartPen,
  terminal: Terminal,
  at: Spot,
  use: TerminalUse,
  inward: Spot,
  radius: number
): void {
  const here = pen.toSheet(at);
  const there = pen.toSheet({ x: at.x + inward.x, y: at.y + inward.y });
  const way = { x: there.x - here.x, y: there.y - here.y };
  const sideways = Math.abs(way.x) > Math.abs(way.y);
  const reach = radius + (sideways ? 0.7 : 1.3);
  const text = fitText(terminal.name, widestNameMm, { ...nameLook, face: 'sans' });
  pen.text(
    nameStyle(terminal, use),
    text,
    { x: at.x + inward.x * reach, y: at.y + inward.y * reach },
    {
      ...nameLook,
      face: 'sans',
      anchor: sideways ? (way.x > 0 ? 'start' : 'end') : 'middle',
      terminal: terminal.id
    }
  );
}

/** A step from a terminal towards the middle of its part, along one of the part's own directions. */
function inwardOf({ outline }: PlacedPart, { x, y }: Spot): Spot {
  if (outline.kind === 'circle') {
    return Math.abs(x) > Math.abs(y) ? { x: -Math.sign(x), y: 0 } : { x: 0, y: y > 0 ? -1 : 1 };
  }
  const far = [
    { way: { x: 0, y: 1 }, mm: y - outline.top },
    { way: { x: 0, y: -1 }, mm: outline.bottom - y },
    { way: { x: 1, y: 0 }, mm: x - outline.left },
    { way: { x: -1, y: 0 }, mm: outline.right - x }
  ];
  return far.reduce((best, one) => (one.mm < best.mm ? one : best)).way;
}

/** The tab of a strip that a terminal is, across the bar. */
function drawTab(
  pen: PartPen,
  terminal: Terminal,
  at: Spot,
  use: TerminalUse,
  level: boolean
): void {
  const [x, y] = level ? [1.9, 3.1] : [3.1, 1.9];
  const style = terminal.grounded
    ? 'part.foot'
    : use.used.has(terminal.id)
      ? 'part.lug'
      : 'part.pin.spare';
  const marks = { terminal: terminal.id, layer: 'terminals' } as const;
  pen.box(style, { x: at.x - x, y: at.y - y }, { x: at.x + x, y: at.y + y }, 1.4, marks);
  const text = fitText(terminal.name, 5.6, nameLook);
  pen.text(nameStyle(terminal, use), text, at, { ...nameLook, ...marks });
}

/** Draws all terminals of a part. */
export function drawTerminals(pen: PartPen, placed: PlacedPart, use: TerminalUse): void {
  const { look, terminals, offsets } = placed;
  const level = isLevelRow([...offsets.values()]);
  const pins = new Set(splitPins(terminals).pins.map(({ id }) => id));
  const isTube = look === 'socket' || look === 'picture tube';
  for (const terminal of terminals) {
    const at = offsets.get(terminal.id) ?? { x: 0, y: 0 };
    const marks = { terminal: terminal.id, layer: 'terminals' } as const;
    if (look === 'strip') drawTab(pen, terminal, at, use, level);
    else if (look === 'mark' || look === 'post') {
      pen.circle(styleFor(terminal, use), at, look === 'post' ? ringMm : 1.7, marks);
    } else if (isTube && !pins.has(terminal.id)) {
      const isAnode = look === 'picture tube';
      pen.circle(isAnode ? 'part.button' : 'part.cap', at, capMm, marks);
      pen.circle(isAnode ? 'part.pin' : 'part.pin', at, dotMm, marks);
    } else if (terminal.ending === 'pigtail' || terminal.ending === 'lead') {
      pen.circle(styleFor(terminal, use), at, dotMm, marks);
      drawNameBeside(pen, terminal, at, use, inwardOf(placed, at), dotMm);
    } else {
      drawRing(pen, terminal, at, use, inwardOf(placed, at));
    }
    if (terminal.grounded && isTube && pins.has(terminal.id))
      drawStrap(pen, placed, terminal.id, at);
  }
}

/** A pin that is bent to the saddle: a strap from the pin out to the rim. */
function drawStrap(pen: PartPen, placed: PlacedPart, id: Id, at: Spot): void {
  if (placed.outline.kind !== 'circle' || exitsOf(placed, id).length === 0) return;
  const reach = Math.hypot(at.x, at.y);
  const rim = placed.outline.r / reach;
  const start = (reach + ringMm) / reach;
  pen.line('part.plate', [
    { x: at.x * start, y: at.y * start },
    { x: at.x * rim, y: at.y * rim }
  ]);
}
