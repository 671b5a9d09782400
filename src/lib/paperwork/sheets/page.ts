// Sheets as one page for print: no script, nothing from a network, the cautions on every sheet of paper.
import { cautionsFor } from '#checks/index.ts';
import type { ChassisDocument } from '#document/index.ts';
import { escapeXmlText } from '#drawing/xml-text.ts';
import type { Block, Sheet, Table } from './sheet.ts';

export const paperSizes = ['A4', 'letter'] as const;
export type PaperSize = (typeof paperSizes)[number];

/** Half per cents of the width, as classes: a page states no style inline. */
const columnWidths = Array.from(
  { length: 60 },
  (_, at) => `.w${at + 1} { width: ${(at + 1) / 2}%; }`
).join(' ');

const style = (paper: PaperSize): string => `
@page { size: ${paper}; margin: 14mm 12mm 10mm; }
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { font: 12pt/1.35 "IBM Plex Sans", "Segoe UI", "Helvetica Neue", Arial, sans-serif; color: #1b1a18; margin: 0 auto; max-width: 190mm; padding: 6mm 4mm; background: #fff; }
h1 { font-size: 18pt; line-height: 1.15; margin: 0 0 1mm; }
h2 { font-size: 13pt; margin: 6mm 0 1.5mm; break-after: avoid; }
p, ul { margin: 0 0 2mm; }
ul { padding-left: 5mm; }
.set { color: #5c574e; font-size: 10.5pt; margin-bottom: 4mm; }
.sheet + .sheet, .turn { break-before: page; }
.warning { border: 0.6mm solid #1b1a18; padding: 2mm 3mm; font-weight: 600; margin: 0 0 2.5mm; break-inside: avoid; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 10.5pt; margin-bottom: 3mm; }
.large table { font-size: 12pt; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; font-weight: 600; border-bottom: 0.4mm solid #1b1a18; padding: 1mm 1.5mm; vertical-align: bottom; }
td { border-bottom: 0.2mm solid #b9b2a4; padding: 1mm 1.5mm; vertical-align: top; }
td.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
td.blank { border: 0.3mm solid #6f695e; min-width: 11mm; height: 8mm; }
td.stop { font-weight: 700; }
table.set { table-layout: fixed; }
table.set td { overflow-wrap: break-word; }
table.set th { font-size: 10.5pt; }
table.set td.tick { text-align: center; }
table.set td.blank { min-width: 0; }
${columnWidths}
/* The foot of a table stands on every sheet of paper, with room kept for it: that is what this one is for. */
.paper { font: inherit; margin: 0; }
.paper > tbody > tr { break-inside: auto; }
.paper > * > tr > td { border: 0; padding: 0; }
.paper > tfoot { display: table-footer-group; }
.paper > tfoot > tr > td { font-size: 7.5pt; line-height: 1.25; color: #3c3831; padding-top: 4mm; }
.cautions { border-top: 0.3mm solid #6f695e; padding-top: 1.5mm; margin: 0; }
@media print { body { max-width: none; padding: 0; } .wide { overflow: visible; } }
`;

function tableHtml({ columns, rows }: Table): string {
  const head = columns
    .map(({ heading }) => `<th scope="col">${escapeXmlText(heading)}</th>`)
    .join('');
  const body = rows
    .map((row) => {
      const cells = columns.map(({ isBlank }, at) => {
        const cell = row[at] ?? null;
        const text = cell === null ? '' : String(cell);
        const name =
          isBlank === true && text === ''
            ? 'blank'
            : text === '✓'
              ? 'tick'
              : typeof cell === 'number'
                ? 'number'
                : text.startsWith('DO NOT MEASURE')
                  ? 'stop'
                  : null;
        return `<td${name === null ? '' : ` class="${name}"`}>${escapeXmlText(text)}</td>`;
      });
      return `<tr>${cells.join('')}</tr>`;
    })
    .join('\n');
  const shares = columns.map(({ share }) => share);
  const hasShares = shares.every((share) => share !== undefined);
  const widths = hasShares
    ? `<colgroup>${shares.map((share) => `<col class="w${Math.round((share ?? 0) * 2)}">`).join('')}</colgroup>`
    : '';
  return `<div class="wide"><table${hasShares ? ' class="set"' : ''}>${widths}<thead><tr>${head}</tr></thead><tbody>\n${body}\n</tbody></table></div>`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h2>${escapeXmlText(block.text)}</h2>`;
    case 'words':
      return `<p>${escapeXmlText(block.text)}</p>`;
    case 'warning':
      return `<p class="warning">${escapeXmlText(block.text)}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${escapeXmlText(item)}</li>`).join('')}</ul>`;
    case 'table':
      return tableHtml(block.table);
    case 'page':
      return '<div class="turn"></div>';
  }
}

/** "Console 21-K, chassis 21-K, run 3". */
export const setLine = ({ identity }: ChassisDocument): string =>
  [
    identity.title,
    identity.chassis === undefined ? null : `chassis ${identity.chassis}`,
    identity.run === undefined ? null : `run ${identity.run}`
  ]
    .filter((part) => part !== null)
    .join(', ');

/** A page whose frame every paper shares. */
export const pageOf = (title: string, styles: string, body: string): string =>
  `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeXmlText(title)}</title>
<style>${styles}</style>
</head>
<body>
${body}
</body>
</html>
`;

/** Sheets of a chassis, each on paper of its own. */
export function sheetsToPage(
  document: ChassisDocument,
  sheets: readonly Sheet[],
  paper: PaperSize = 'A4'
): string {
  const set = escapeXmlText(setLine(document));
  const body = sheets
    .map(
      ({ title, blocks, isLarge }) =>
        `<section class="sheet${isLarge === true ? ' large' : ''}">\n<h1>${escapeXmlText(title)}</h1>\n<p class="set">${set}</p>\n${blocks.map(blockHtml).join('\n')}\n</section>`
    )
    .join('\n');
  const foot = cautionsFor(document)
    .map(({ short }) => escapeXmlText(short))
    .join(' ');
  const [first] = sheets;
  const title = `${sheets.length === 1 && first ? first.title : 'Sheets'}: ${document.identity.title}`;
  return pageOf(
    title,
    style(paper),
    `<table class="paper" role="presentation"><tbody><tr><td><main>\n${body}\n</main></td></tr></tbody>
<tfoot><tr><td><p class="cautions">${foot}</p></td></tr></tfoot></table>`
  );
}
