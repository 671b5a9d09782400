// The shelf on paper and as a table: what there is, how long, where.
import { sortByOrder } from '#document/order.ts';
import { colourWords } from '#plan/index.ts';
import type { Study } from '#study/index.ts';
import { table, words, type Cell, type Sheet } from './sheet.ts';

export const shelfColumns = [
  { heading: 'Name', width: 26 },
  { heading: 'Kind', width: 9 },
  { heading: 'Gauge AWG', width: 10 },
  { heading: 'Strands', width: 10 },
  { heading: 'Colour', width: 16 },
  { heading: 'Style', width: 12 },
  { heading: 'Insulation', width: 16 },
  { heading: 'Volts', width: 8 },
  { heading: 'dc V', width: 8 },
  { heading: 'ac V rms', width: 9 },
  { heading: 'Pulse V peak', width: 12 },
  { heading: 'Temp C', width: 8 },
  { heading: 'On hand m', width: 10 },
  { heading: 'Price per m', width: 11 },
  { heading: 'Where', width: 16 },
  { heading: 'Notes', width: 40 }
];

export const shelfRows = ({ document }: Study): readonly (readonly Cell[])[] =>
  sortByOrder(document.shelf).map((stock) => [
    stock.name,
    stock.kind,
    stock.awg ?? null,
    stock.stranding ?? null,
    stock.colour === undefined
      ? null
      : colourWords({ colour: stock.colour, tracer: stock.tracer ?? null }),
    stock.style ?? null,
    stock.insulation ?? null,
    stock.ratingV ?? null,
    stock.ratings?.dcV ?? null,
    stock.ratings?.acRmsV ?? null,
    stock.ratings?.pulseV ?? null,
    stock.ratingC ?? null,
    Number((stock.lengthMm / 1000).toFixed(3)),
    stock.pricePerMetre ?? null,
    stock.where ?? null,
    stock.notes ?? null
  ]);

/** As much as goes on paper. */
const onPaper = ['Name', 'Kind', 'Colour', 'Style', 'Volts', 'On hand m', 'Where', 'Notes'];

export function shelfSheet(study: Study): Sheet {
  const at = onPaper.map((name) => shelfColumns.findIndex(({ heading }) => heading === name));
  return {
    title: 'Shelf',
    blocks: [
      words('A rating that is not written here is not known, and no wire is cut by it.'),
      table(
        onPaper.map((heading) => ({ heading })),
        shelfRows(study).map((row) => at.map((column) => row[column] ?? null))
      )
    ]
  };
}
