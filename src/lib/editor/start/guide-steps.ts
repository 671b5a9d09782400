// The short tour of the book on a first visit: what to look at, tied to real things on screen, and where
// its card stands beside each.
import type { BookPage } from '../ui/book-pages.ts';

export interface GuideStep {
  readonly title: string;
  readonly text: string;
  /** What is shown, as a selector; the first that is on screen. */
  readonly target: string;
  /** The page that a narrow screen turns to. */
  readonly page: BookPage;
}

export const guideSteps: readonly GuideStep[] = [
  {
    title: 'Every wire is a row',
    text: 'Where it starts and ends, its colour, what it carries, and the insulation class it needs. Type into any cell; what follows is worked out at once.',
    target: '[data-testid=schedule]',
    page: 'schedule'
  },
  {
    title: 'The same wires on the sheet',
    text: 'Colour and stroke tell the class that each needs. Press a wire, a part or a terminal: a tag says what it needs, and why.',
    target: '[data-testid=sheet]',
    page: 'sheet'
  },
  {
    title: 'What could hurt stands in the margin',
    text: 'Each note gives its reason, its source and, where there is one, a fix. No note does not mean safe: what was not looked at is said as well.',
    target: '[data-testid=notes]',
    page: 'notes'
  },
  {
    title: 'Now your own chassis',
    text: 'Start with its tubes, then walk the pins: at each, say what you see. No measurement is asked. While you capture, only dangers are said at once.',
    target: '[data-testid=way-capture]',
    page: 'schedule'
  }
];

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const margin = 12;

const clamp = (value: number, most: number): number =>
  Math.max(margin, Math.min(value, Math.max(margin, most)));

/** Where the card stands, px: beside what it speaks of where there is room, else over its foot, and
 *  always whole on the screen. */
export const placeCard = (
  target: Box,
  card: { readonly width: number; readonly height: number },
  screen: { readonly width: number; readonly height: number }
): { readonly left: number; readonly top: number } => {
  const mostLeft = screen.width - card.width - margin;
  const mostTop = screen.height - card.height - margin;
  const right = target.left + target.width + margin;
  const before = target.left - card.width - margin;
  const middle = clamp(target.top + Math.min(target.height / 3, 120), mostTop);
  if (right >= margin && right <= mostLeft) return { left: right, top: middle };
  if (before >= margin && before <= mostLeft) return { left: before, top: middle };
  const below = target.top + target.height + margin;
  const left = clamp(target.left + target.width / 2 - card.width / 2, mostLeft);
  if (below >= margin && below <= mostTop) return { left, top: below };
  return { left, top: clamp(target.top + target.height - card.height - margin, mostTop) };
};
