// The schedule as a spreadsheet reads it: text that a spreadsheet would run is neutralised,
// numbers stay numbers, and the headings are those that the intake recognises again.
import Papa from 'papaparse';
import { formulaStart } from './formula-start.ts';
import type { ScheduleRow } from './schedule.ts';

type Cell = string | number | null;

/** "not known" is written out: an empty cell would read as "nothing there". */
const classText = (volts: number | null, atLeast: boolean): Cell =>
  volts === null ? 'not known' : atLeast ? `at least ${volts}` : volts;

export const scheduleColumns: readonly (readonly [
  heading: string,
  cell: (row: ScheduleRow) => Cell
])[] = [
  ['No', (row) => row.number],
  ['From', (row) => row.from],
  ['To', (row) => row.to],
  ['Function', (row) => row.function],
  ['Unit', (row) => row.unit],
  ['Cable', (row) => row.cable],
  ['Connected points', (row) => row.net],
  ['Type', (row) => row.construction],
  ['Colour', (row) => row.colour],
  ['Tracer', (row) => row.tracer],
  ['V dc', (row) => row.dcV],
  ['V ac rms', (row) => row.acV],
  ['V pulse peak', (row) => row.pulseV],
  ['Amps', (row) => row.amps],
  ['Stress V', (row) => (row.stressV === null ? 'not known' : row.stressV)],
  // A minus sign proper: a hyphen in front would make a spreadsheet take the words for a formula.
  ['Stress basis', (row) => row.stressBasis?.replace(/^-/, '\u2212') ?? null],
  ['Class needed V', (row) => classText(row.classV, row.atLeast)],
  ['Class preferred V', (row) => classText(row.preferredV, row.atLeast)],
  ['Gauge found AWG', (row) => row.foundAwg],
  ['Gauge planned AWG', (row) => row.plannedAwg],
  ['Rating found V', (row) => row.foundRatingV],
  ['Rating planned V', (row) => row.plannedRatingV],
  ['Length mm', (row) => row.lengthMm],
  ['Cut mm', (row) => row.cutMm],
  ['Cut in', (row) => row.cutIn],
  ['End at from', (row) => row.endA],
  ['End at to', (row) => row.endB],
  ['Strip at from mm', (row) => row.stripAMm],
  ['Strip at to mm', (row) => row.stripBMm],
  ['Sleeve', (row) => row.sleeve],
  ['Route', (row) => row.route],
  ['Condition', (row) => row.condition],
  ['Origin', (row) => row.origin],
  ['Dress', (row) => row.dress],
  ['State', (row) => row.state],
  ['Notes', (row) => row.notes],
  ['Findings', (row) => row.findings.join(' ')]
];

/** The schedule as CSV text: a byte order mark for spreadsheets, CRLF line ends, one heading row. */
export const scheduleToCsv = (rows: readonly ScheduleRow[]): string =>
  '\uFEFF' +
  Papa.unparse(
    {
      fields: scheduleColumns.map(([heading]) => heading),
      data: rows.map((row) => scheduleColumns.map(([, cell]) => cell(row)))
    },
    { newline: '\r\n', escapeFormulae: formulaStart }
  ) +
  '\r\n';

/** The schedule as the JSON that other programs read: `{ "rows": [ … ] }`. */
export const scheduleToJson = (rows: readonly ScheduleRow[]): string =>
  JSON.stringify({ rows }, null, 1) + '\n';
