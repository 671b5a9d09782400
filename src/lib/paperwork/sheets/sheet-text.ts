// A sheet as text for a terminal: tables in columns, cells that are long let to run.
import type { Block, Cell, Sheet, Table } from './sheet.ts';

const cellText = (cell: Cell): string => (cell === null ? '' : String(cell));
const widest = 48;

function tableText({ columns, rows }: Table): string {
  const shown = columns
    .map((column, at) => ({ column, at }))
    .filter(({ column }) => column.isBlank !== true);
  const lines = [
    shown.map(({ column }) => column.heading),
    ...rows.map((row) => shown.map(({ at }) => cellText(row[at] ?? null)))
  ];
  const widths = shown.map((_, at) =>
    Math.min(widest, Math.max(...lines.map((line) => line[at]?.length ?? 0)))
  );
  return lines
    .map((line) =>
      line
        .map((text, at) => text.padEnd(widths[at] ?? 0))
        .join('  ')
        .trimEnd()
    )
    .join('\n');
}

function blockText(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `${block.text}\n${'-'.repeat(block.text.length)}`;
    case 'warning':
      return `CAUTION: ${block.text}`;
    case 'words':
      return block.text;
    case 'list':
      return block.items.map((item) => `- ${item}`).join('\n');
    case 'table':
      return tableText(block.table);
    case 'page':
      return '';
  }
}

export const sheetToText = ({ title, blocks }: Sheet): string =>
  [
    `${title}\n${'='.repeat(title.length)}`,
    ...blocks.map(blockText).filter((text) => text !== '')
  ].join('\n\n') + '\n';
