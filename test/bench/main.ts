// All benchmarks, in one run: every line is a ratio against a baseline that was measured in it.
import { judgeCanvas } from './canvas.ts';
import { benchDrawing } from './drawing.ts';
import { benchEdits } from './edits.ts';
import { sumUp } from './goals.ts';
import { benchGrowth, benchStudy } from './study.ts';

console.log('Study and rules against the parse of the same document');
const whole = benchStudy();
console.log('\nStudy and rules of a chassis twice as large');
const growth = benchGrowth();
console.log('\nAn edit of one wire against a study, and against all rules, from nothing');
const edits = benchEdits();
console.log('\nThe canvas in Chromium');
const canvas = judgeCanvas();
console.log('\nThe drawing');
const drawing = await benchDrawing();
sumUp([...whole, ...growth, ...edits, ...canvas, ...drawing]);
