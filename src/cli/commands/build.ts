// All that leaves the tool for one chassis, in one folder: drawing, schedule, findings, document.
import { join } from 'node:path';
import { saveDocument } from '#document/index.ts';
import { buildTestSheets } from '#plan/index.ts';
import {
  benchList,
  buildSchedule,
  countBySeverity,
  cutColumns,
  cutRows,
  nothingCut,
  findingsToJson,
  findingsToText,
  labelSheets,
  makeWholePlan,
  planSheets,
  scheduleToCsv,
  scheduleToJson,
  scheduleToXlsx,
  sheetsToPage,
  shoppingColumns,
  shoppingRows,
  tableToCsv,
  tagsPage,
  testSheetOnPaper,
  wholePlanToJson,
  type WholePlan
} from '#paperwork/index.ts';
import { CommandError, onlyPositional, type Command } from '../command.ts';
import { drawChassis } from '../draw-chassis.ts';
import { drawPage } from '../draw-page.ts';
import { writeBytes, writeText } from '../files.ts';
import { judge, type Judged } from '../judge.ts';
import { drawOptions, readDrawOptions } from './draw.ts';

const usage = 'DOC --out DIR [--all]';

export const buildCommand: Command = {
  name: 'build',
  usage,
  help: 'Write both drawings, schedule, findings and document into a folder.',
  options: [
    { name: 'out', value: 'DIR', help: 'The folder; made where it is missing.' },
    { name: 'all', help: 'Plan, cut and shopping list, tags, sheets, workbook and page as well.' },
    ...drawOptions
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `build ${usage}`);
    const out = input.values['out'];
    if (out === undefined) throw new CommandError(`--out is missing: use build ${usage}`);
    const options = readDrawOptions(input);
    const judged = await judge(path, terminal);
    const rows = buildSchedule(judged.study, judged.findings);
    // To scale only where somebody gave places.
    const isPlaced = judged.study.index.parts.some((part) => part.place !== undefined);
    const pictorial: [string, string][] = isPlaced
      ? [['pictorial.svg', await drawChassis(path, judged, 'pictorial', options, terminal)]]
      : [];
    const files: readonly (readonly [name: string, text: string])[] = [
      ['diagram.svg', await drawChassis(path, judged, 'diagram', options, terminal)],
      ...pictorial,
      ['schedule.csv', scheduleToCsv(rows)],
      ['schedule.json', scheduleToJson(rows)],
      ['findings.txt', findingsToText(judged.findings)],
      ['findings.json', findingsToJson(judged.findings)],
      ['document.chassis.json', saveDocument(judged.document)]
    ];
    const whole = input.switches.has('all') ? makeWholePlan(judged.study) : null;
    const more: [string, string][] = whole
      ? [
          ...allPaper(judged, whole),
          ['page.html', await drawPage(path, judged, new Set(), options, terminal)]
        ]
      : [];
    for (const [name, text] of [...files, ...more]) {
      await writeText(join(out, name), text);
      terminal.out(`${join(out, name)}\n`);
    }
    if (whole) {
      const book = await scheduleToXlsx(judged.study, rows, whole);
      const place = join(out, 'schedule.xlsx');
      await writeBytes(place, new Uint8Array(await book.arrayBuffer()));
      terminal.out(`${place}\n`);
    }
    const counts = Object.entries(countBySeverity(judged.findings));
    terminal.say(
      `${judged.document.identity.title}: ${rows.length} wires; ${counts.map(([severity, count]) => `${count} ${severity}`).join(', ')}`
    );
    return 0;
  }
};

/** What is printed for the bench. */
function allPaper({ document, study }: Judged, whole: WholePlan): [string, string][] {
  const tests = buildTestSheets(study).map((test) => testSheetOnPaper(study, test));
  const [sheet] = labelSheets;
  return [
    ['plan.html', sheetsToPage(document, planSheets(study, whole))],
    ['plan.json', wholePlanToJson(whole)],
    [
      'cut-list.csv',
      tableToCsv({
        columns: cutColumns,
        rows: whole.cuts.cuts.length === 0 ? [[nothingCut]] : cutRows(study, whole.cuts)
      })
    ],
    [
      'shopping-list.csv',
      tableToCsv({ columns: shoppingColumns, rows: shoppingRows(study, whole.shopping) })
    ],
    ['bench-list.html', sheetsToPage(document, [benchList(study, whole.plan)])],
    ['test-sheets.html', sheetsToPage(document, tests)],
    ...(sheet ? [['tags.html', tagsPage(study, { sheet })] as [string, string]] : [])
  ];
}
