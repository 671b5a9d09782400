// A drawing looked at in another way: colours tell something else, dash and width still tell the class, and what is
// left out is only out of sight.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import type { ChassisDocument } from '#document/index.ts';
import { buildDiagram, buildDisplayList, styleOf } from '#drawing/index.ts';
import { applyLook } from '#drawing/apply-look.ts';
import { colourings, plainLook, toneInks, toneWords } from '#drawing/look.ts';
import { findColourHex } from '#handbook/index.ts';
import { buildStudy } from '#study/build-study.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

const radio = new URL('../../static/demonstrations/five-tube-radio.chassis.json', import.meta.url);
const study = buildStudy(JSON.parse(readFileSync(radio, 'utf8')) as ChassisDocument);
const findings = runChecks(study);
const list = buildDisplayList(
  await buildDiagram(study, layoutEngine, { tries: 1, timeLimitMs: 60_000 }),
  {
    findings
  }
);
describe('the look of a drawing', () => {
  it.each(colourings.filter((one) => one !== 'class'))(
    'by %s keeps dash and width of every wire, and every other item',
    (colouring) => {
      const shown = applyLook(list, study, findings, { ...plainLook, colouring });
      let changed = 0;
      const before = new Map(list.items.map((item) => [item.id, item]));
      for (const item of shown.items.filter(({ id }) => !id.endsWith('-edge'))) {
        const old = before.get(item.id)!;
        const [was, is] = [styleOf(old.style, 'print'), styleOf(item.style, 'print')];
        expect({ dash: is.dash, width: is.width }).toEqual({ dash: was.dash, width: was.width });
        expect(item.shape).toEqual(old.shape);
        if (old.style !== item.style) changed += 1;
      }
      expect(shown.items.filter(({ id }) => !id.endsWith('-edge'))).toHaveLength(list.items.length);
      expect(changed).toBeGreaterThan(2);
    }
  );

  it('shows a wire in its own colour where one is written, and in plain ink where none is', () => {
    const shown = applyLook(list, study, findings, { ...plainLook, colouring: 'colour' });
    let written = 0;
    for (const item of shown.items.filter(({ style }) => style.includes('.hue.'))) {
      const { found } = study.index.wires.find(({ id }) => id === item.subject?.id)!;
      expect(styleOf(item.style, 'light').stroke).toBe(findColourHex(found!.colour!));
      written += 1;
    }
    expect(written).toBeGreaterThan(5);
  });

  it('leaves out what is to be left out and nothing else', () => {
    const shown = applyLook(list, study, findings, { ...plainLook, without: ['numbers'] });
    expect(shown.items.some(({ layer }) => layer === 'numbers')).toBe(false);
    expect(shown.items).toEqual(list.items.filter(({ layer }) => layer !== 'numbers'));
  });

  it('has an ink of its own for every word', () => {
    for (const [key, words] of Object.entries(toneWords)) {
      const inks = toneInks[key as keyof typeof toneInks];
      expect(new Set(inks).size).toBe(words.length);
    }
  });
});
