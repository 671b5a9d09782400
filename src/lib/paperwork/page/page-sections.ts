// The sections of the one-file page that are plain text: they read without any script.
import { severities, type Finding } from '#checks/index.ts';
import type { ChassisDocument } from '#document/index.ts';
import { escapeXmlText } from '#drawing/xml-text.ts';
import type { Study } from '#study/index.ts';
import type { ScheduleRow } from '../schedule.ts';
import type { FactGroup } from './club-facts.ts';

const text = (value: string | number | null): string =>
  value === null ? '' : escapeXmlText(String(value));
const points = (items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${escapeXmlText(item)}</li>`).join('')}</ul>`;
/** So many are seen at once. */
const seen = 6;
const list = (items: readonly string[]): string =>
  items.length <= seen + 1
    ? points(items)
    : `${points(items.slice(0, seen))}<details><summary>and ${items.length - seen} more</summary>${points(items.slice(seen))}</details>`;

/** What a club wants to know, a card a group. */
export const factsHtml = (groups: readonly FactGroup[], word: string): string =>
  `<section id="facts"><h2>About this set</h2><div class="cards">${groups
    .map(({ title, items }) => `<div><h3>${escapeXmlText(title)}</h3>${list(items)}</div>`)
    .join('')}</div><p class="quiet">${escapeXmlText(word)}</p></section>`;

/** Findings, worst first, each with its caution and its source. */
export const findingsHtml = (findings: readonly Finding[]): string => {
  const sorted = severities.flatMap((severity) =>
    findings.filter((finding) => finding.severity === severity)
  );
  const items = sorted.map(({ severity, at, message, source, caution }) => {
    const places = at
      .map(({ kind, id, label }) =>
        kind === 'wire' || kind === 'part'
          ? `<button type="button" class="go" data-kind="${kind}" data-id="${escapeXmlText(id)}">${escapeXmlText(label)}</button>`
          : escapeXmlText(label)
      )
      .join(', ');
    return `<li class="${severity}"><strong>${severity}</strong> ${places}<br>${escapeXmlText(message)}${caution === undefined ? '' : `<br><em>${escapeXmlText(caution)}</em>`}<br><small>${escapeXmlText(source)}</small></li>`;
  });
  return `<section id="findings"><h2>Findings</h2>${items.length === 0 ? '<p>No finding. That is not to say that anything is safe: faulty parts, leakage and what nobody wrote down are not looked at.</p>' : `<ol class="findings">${items.join('')}</ol>`}</section>`;
};

const kilo = (volts: number): string => (volts >= 1000 ? `${volts / 1000} kV` : `${volts} V`);
const carriesOf = ({ dcV, acV, pulseV, amps }: ScheduleRow): string =>
  [
    dcV === null ? '' : `${dcV} V dc`,
    acV === null ? '' : `${acV} V ac`,
    pulseV === null ? '' : `${pulseV} V pulse`,
    amps === null ? '' : `${amps} A`
  ]
    .filter((words) => words !== '')
    .join(', ');

const columns: readonly (readonly [
  heading: string,
  cell: (row: ScheduleRow) => string | number | null
])[] = [
  ['From', (row) => row.from],
  ['To', (row) => row.to],
  ['Function', (row) => row.function],
  ['Carries', carriesOf],
  [
    'Class needed',
    ({ classV, atLeast }) =>
      classV === null ? 'not known' : `${atLeast ? 'at least ' : ''}${kilo(classV)}`
  ],
  ['Gauge', ({ awg }) => (awg === null ? null : `${awg} AWG`)],
  ['Colour', ({ colour, tracer }) => [colour, tracer].filter(Boolean).join('/')],
  ['Cut', ({ cutMm, cutIn }) => (cutMm === null ? null : `${cutMm} mm, ${cutIn ?? ''} in`)],
  ['Dress', (row) => row.dress],
  ['State', (row) => row.state],
  ['Findings', (row) => row.findings.join(' ')]
];

/** The schedule; the page's script sorts and filters it. */
export const scheduleHtml = (study: Study, rows: readonly ScheduleRow[]): string => {
  const head = ['No', ...columns.map(([heading]) => heading)]
    .map((heading) => `<th scope="col"><button type="button" class="sort">${heading}</button></th>`)
    .join('');
  const body = rows
    .map((row, index) => {
      const id = study.index.wires[index]?.id ?? '';
      const cells = columns.map(([, cell]) => `<td>${text(cell(row))}</td>`).join('');
      return `<tr><th scope="row"><button type="button" class="go" data-kind="wire" data-id="${escapeXmlText(id)}">${text(row.number || '–')}</button></th>${cells}</tr>`;
    })
    .join('\n');
  return `<section id="schedule"><h2>Wire schedule</h2><div class="tools"><label class="search">Show rows with <input id="filter" type="search" autocomplete="off"></label><span id="row-count" class="quiet" role="status">${rows.length} wires</span></div><div class="wide" tabindex="0" role="group" aria-label="Wire schedule"><table id="wires"><thead><tr>${head}</tr></thead><tbody>
${body}
</tbody></table></div></section>`;
};

/** Readings with what stands beside them; nothing where nobody measured. */
export const readingsHtml = ({ proof }: ChassisDocument): string => {
  const readings = Object.entries(proof?.readings ?? {});
  const records = Object.entries(proof?.records ?? {});
  if (readings.length === 0 && records.length === 0) return '';
  const beside = records.flatMap(([sheet, values]) =>
    Object.entries(values).map(
      ([what, value]) => `${sheet.replaceAll('-', ' ')}, ${what}: ${value}`
    )
  );
  const rows = readings.map(
    ([row, { where, typed, on, notes }]) =>
      `<tr><th scope="row">${text(where ?? row)}</th><td>${text(typed)}</td><td>${text(on ?? null)}</td><td>${text(notes ?? null)}</td></tr>`
  );
  const table =
    rows.length === 0
      ? ''
      : `<div class="wide"><table><thead><tr><th scope="col">Where</th><th scope="col">Reading</th><th scope="col">On</th><th scope="col">Notes</th></tr></thead><tbody>${rows.join('')}</tbody></table></div>`;
  return `<section id="readings"><h2>Readings</h2>${beside.length === 0 ? '' : list(beside)}${table}</section>`;
};

/** Photos as they were taken. */
export const photosHtml = (
  photos: readonly { readonly name: string; readonly notes: string; readonly source: string }[]
): string =>
  photos.length === 0
    ? ''
    : `<section id="photos"><h2>Photos</h2><div class="photos">${photos
        .map(
          ({ name, notes, source }) =>
            `<figure><img src="${source}" alt="${escapeXmlText(name || 'photo')}" loading="lazy"><figcaption>${escapeXmlText([name, notes].filter(Boolean).join(': '))}</figcaption></figure>`
        )
        .join('')}</div></section>`;
