// The plan on paper: what replaces each wire, what is cut from what, what to buy, in which order.
import { findElement } from '#document/references.ts';
import {
  colourWords,
  type CutList,
  type Plan,
  type ShoppingList,
  type WirePlan,
  type WorkStep
} from '#plan/index.ts';
import { formatAwg, formatInches, formatNumber, formatVolts } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { heading, list, table, warning, words, type Block, type Sheet } from './sheet.ts';

export const numberOf = ({ document, index }: Study, id: string): string => {
  const wire = findElement(document.wires, id);
  if (!wire) return id;
  return wire.number || `${index.labelOf(wire.from)} to ${index.labelOf(wire.to)}`;
};

const numbers = (study: Study, ids: readonly string[]): string =>
  ids.map((id) => numberOf(study, id)).join(', ');

/** "22 AWG solid, UL 1015, red": what will lie there. */
export const offerWords = ({ offer }: WirePlan): string | null =>
  offer === null
    ? null
    : [
        offer.awg === null
          ? null
          : `${formatAwg(offer.awg)}${offer.stranding === null ? '' : ` ${offer.stranding}`}`,
        offer.style ?? offer.insulation,
        offer.colour === null ? null : colourWords(offer)
      ]
        .filter((part) => part !== null)
        .join(', ');

export const planColumns = [
  { heading: 'No', width: 6 },
  { heading: 'Way', width: 11 },
  { heading: 'Needs V', width: 10 },
  { heading: 'Wire', width: 34 },
  { heading: 'From the shelf', width: 26 },
  { heading: 'Cut mm', width: 8 },
  { heading: 'Cut in', width: 10 },
  { heading: 'Margin', width: 34 },
  { heading: 'Falls short', width: 40 },
  { heading: 'To know', width: 50 }
];

export const planRow = (study: Study, own: WirePlan) => [
  numberOf(study, own.wire),
  own.by === 'done' ? 'done' : own.by === 'person' ? `${own.way} (chosen)` : own.way,
  own.want === null
    ? null
    : `${own.want.atLeast ? 'at least ' : ''}${formatVolts(own.want.classV)}`,
  own.unmet ? `to buy: ${own.unmet.lookFor}` : offerWords(own),
  own.stockType?.name ?? null,
  own.cutMm,
  own.cutMm === null ? null : formatInches(own.cutMm, 'up'),
  own.margin?.words ?? null,
  own.costs.join('; ') || null,
  [own.way === 'keep' && own.by === 'proposal' ? own.why : null, own.unmet?.why, ...own.notes]
    .filter((text) => text != null)
    .join('; ') || null
];

/** As many columns as go on paper. */
const paperColumns = ['No', 'Way', 'Needs', 'Wire', 'Cut', 'Margin', 'To know'].map((text) => ({
  heading: text
}));

function paperRow(study: Study, own: WirePlan) {
  const [number, way, needs, wire, shelf, , , , costs, notes] = planRow(study, own);
  const { cutMm, margin } = own;
  return [
    number ?? null,
    way ?? null,
    needs ?? null,
    [wire, shelf == null ? null : `from ${shelf}`].filter((text) => text != null).join('; '),
    cutMm === null ? null : `${formatNumber(cutMm, 6)} mm, ${formatInches(cutMm, 'up')}`,
    margin?.ratio == null
      ? null
      : `${own.want?.atLeast === true ? 'at most ' : ''}${formatNumber(margin.ratio, 3)} x`,
    [costs, notes].filter((text) => text != null).join('; ')
  ];
}

export function planSheet(study: Study, plan: Plan): Sheet {
  const toDo = plan.wires.filter(({ by, way }) => by !== 'done' && way !== 'keep');
  const kept = plan.wires.filter(({ by, way }) => by !== 'done' && way === 'keep');
  const short = plan.wires.filter(({ costs }) => costs.length > 0);
  const done = plan.wires.length - toDo.length - kept.length;
  return {
    title: 'Plan',
    blocks: [
      words(
        `${toDo.length} wires to do, ${kept.length} kept, ${done} done. A choice that somebody made stands; what it falls short of is written beside it.`
      ),
      ...short.map((own) => warning(`Wire ${numberOf(study, own.wire)}: ${own.costs.join('; ')}.`)),
      heading('To do'),
      table(
        paperColumns,
        toDo.map((own) => paperRow(study, own))
      ),
      ...(kept.length === 0
        ? []
        : [
            heading('Kept'),
            table(
              [{ heading: 'No' }, { heading: 'Margin' }, { heading: 'Why' }],
              kept.map((own) => [
                numberOf(study, own.wire),
                own.margin?.words ?? null,
                own.costs.join('; ') || own.why
              ])
            )
          ])
    ]
  };
}

export const cutColumns = [
  { heading: 'Cut from', width: 30 },
  { heading: 'Where', width: 16 },
  { heading: 'Has mm', width: 10 },
  { heading: 'Pieces mm (wire)', width: 60 },
  { heading: 'Left mm', width: 10 },
  { heading: 'What is left', width: 18 }
];

export const cutRows = (study: Study, cuts: CutList) =>
  cuts.cuts.map(({ stock, pieces, leftMm, left }) => [
    stock.name,
    stock.where ?? null,
    stock.lengthMm,
    pieces.map(({ wire, mm }) => `${formatNumber(mm, 6)} (${numberOf(study, wire)})`).join(', '),
    Number(leftMm.toFixed(1)),
    left
  ]);

/** In place of an empty cut list. */
export const nothingCut =
  'Nothing is cut from the shelf. What is needed is not on it: see the shopping list.';

export function cutSheet(study: Study, cuts: CutList): Sheet {
  const notes: Block[] = [];
  if (cuts.unplaced.length > 0)
    notes.push(
      warning(
        `Too short a shelf for ${numbers(
          study,
          cuts.unplaced.map(({ wire }) => wire)
        )}: see the shopping list.`
      )
    );
  if (cuts.lengthUnknown.length > 0)
    notes.push(words(`Length not known, nothing cut yet: ${numbers(study, cuts.lengthUnknown)}.`));
  return {
    title: 'Cut list',
    blocks: [
      words(
        cuts.cuts.length === 0
          ? nothingCut
          : `${cuts.cuts.reduce((sum, { pieces }) => sum + pieces.length, 0)} pieces, ${formatNumber(cuts.cutMm / 1000)} m, out of ${cuts.cuts.length} pieces of the shelf; ${formatNumber(cuts.scrapMm)} mm scrap. No cutting does with fewer than ${cuts.atLeast}.`
      ),
      ...notes,
      ...(cuts.cuts.length === 0 ? [] : [table(cutColumns, cutRows(study, cuts))])
    ]
  };
}

export const shoppingColumns = [
  { heading: 'Kind', width: 10 },
  { heading: 'What', width: 70 },
  { heading: 'Count', width: 8 },
  { heading: 'Of mm', width: 9 },
  { heading: 'Needed mm', width: 11 },
  { heading: 'Price', width: 9 },
  { heading: 'For wires', width: 24 },
  { heading: 'Note', width: 40 }
];

const money = (amount: number): number => Number(amount.toFixed(2));

export const shoppingRows = (study: Study, { lines }: ShoppingList) =>
  lines.map(({ kind, what, count, soldMm, neededMm, price, wires, notes }) => [
    kind,
    what,
    count,
    soldMm,
    neededMm === null ? null : Math.ceil(neededMm),
    price === null ? null : money(price),
    numbers(study, wires),
    notes
  ]);

/** A sum of no prices says nothing. */
const totalWords = ({ isWhole, total }: ShoppingList): string => {
  if (isWhole) return `Total ${money(total)}, in the shelf's own money`;
  return total === 0
    ? 'No price is known'
    : `Total at least ${money(total)}, in the shelf's own money; of the rest no price is known`;
};

export const shoppingSheet = (study: Study, shopping: ShoppingList): Sheet => ({
  title: 'Shopping list',
  blocks: [
    words(
      shopping.lines.length === 0
        ? 'Nothing is missing.'
        : `${totalWords(shopping)}. Lengths are rounded up to what is sold; buy by rating and gauge, and read the print on the wire.`
    ),
    ...(shopping.lines.length === 0 ? [] : [table(shoppingColumns, shoppingRows(study, shopping))])
  ]
});

const orderItem = (study: Study, { wire, notes }: WorkStep['wires'][number]): string => {
  const own = findElement(study.document.wires, wire);
  const ends = own ? `${study.index.labelOf(own.from)} to ${study.index.labelOf(own.to)}` : '';
  return `${numberOf(study, wire)}: ${[ends, ...notes].join('; ')}`;
};

export function orderSheet(study: Study, steps: readonly WorkStep[]): Sheet {
  const isSingle = steps.every(({ wires }) => wires.length === 1);
  const own: readonly Block[] = isSingle
    ? [
        words('One wire out, in and checked, then the next: nothing has to be remembered.'),
        list(steps.flatMap(({ wires }) => wires.map((each) => orderItem(study, each))))
      ]
    : steps.flatMap(({ title, words: how, wires }) => [
        heading(title),
        words(how),
        list(wires.map((each) => orderItem(study, each)))
      ]);
  return { title: 'Order of work', blocks: [warning(dischargeWords), ...own] };
}

const dischargeWords =
  'Discharge first: plug pulled, picture tube and filters discharged, clip left on, measured.';
