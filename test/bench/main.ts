// All benchmarks, in one run: every line is a ratio against a baseline that was measured in it.
import { benchDrawing } from './drawing.ts';
import { benchEdits, benchGrowth, benchStudy } from './study.ts';

benchStudy();
benchGrowth();
benchEdits();
await benchDrawing();
