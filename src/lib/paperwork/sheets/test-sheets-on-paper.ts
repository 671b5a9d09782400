// The test sheets on paper: discharge first on every one, then what has to be so, then the readings.
import { chargedParts, dischargeSteps, judgeReading, type TestSheet } from '#plan/index.ts';
import type { Study } from '#study/index.ts';
import { heading, list, table, warning, words, type Block, type Sheet } from './sheet.ts';

export const testColumns = [
  { heading: 'What', width: 26 },
  { heading: 'Where', width: 34 },
  { heading: 'Expected', width: 34 },
  { heading: 'Reading', width: 12, isBlank: true },
  { heading: 'To know', width: 50 }
];

/** Readings that were typed in stand in their column, as they were typed, with how they were judged. */
export const testRows = ({ document }: Study, { rows }: TestSheet) =>
  rows.map(({ id, what, where, words: expectedWords, expected, doNotMeasure, note }) => {
    const typed = document.proof?.readings?.[id]?.typed;
    const judged = typed === undefined ? null : judgeReading(expected, typed);
    return [
      what,
      where,
      expectedWords,
      doNotMeasure ? '—' : judged ? `${typed} (${judged.verdict})` : null,
      note
    ];
  });

export const dischargeBlocks = (study: Study): readonly Block[] => {
  const charged = chargedParts(study);
  return [
    heading('Discharge first'),
    list(dischargeSteps),
    ...(charged.length === 0
      ? [
          words(
            'No capacitor with known volts is in the document. That does not say that none is charged.'
          )
        ]
      : [list(charged.map(({ words: text }) => text))])
  ];
};

const recorded = ({ document }: Study, { id }: TestSheet, what: string): string =>
  document.proof?.records?.[id]?.[what] ?? '______________';

export const testSheetOnPaper = (study: Study, test: TestSheet): Sheet => ({
  title: test.title,
  blocks: [
    ...dischargeBlocks(study),
    heading('Before the first reading'),
    list(test.before),
    ...test.limits.map(warning),
    words(
      `Write down: ${test.record.map((each) => `${each} ${recorded(study, test, each)}`).join('   ')}`
    ),
    ...(test.rows.length === 0
      ? [words('Nothing in the document asks for this test.')]
      : [table(testColumns, testRows(study, test))])
  ]
});
