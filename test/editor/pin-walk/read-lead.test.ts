// Lines as restorers write them in a notebook: common practice, no source.
import { describe, expect, test } from 'vitest';
import { readLead } from '#editor/pin-walk/read-lead.ts';
import { EndNames } from '#editor/schedule/end-text.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../../helpers/chassis.ts';

const document = chassis('Bench set')
  .unit('Main chassis')
  .tube('V2', '6CG7')
  .strip('TS3', 5)
  .part('transformer', 'T1', ['red', 'blue'])
  .ground('G3')
  .build();
const ends = new EndNames(document, buildStudy(document).index);

const short = (text: string): string => {
  const reading = readLead(text, ends);
  if (!reading.ok) return `refused: ${reading.why}`;
  const { lead, far } = reading;
  const name =
    lead.kind === 'part'
      ? [lead.partKind, lead.value].filter(Boolean).join(' ')
      : [lead.construction, lead.colour, lead.tracer].filter(Boolean).join('/');
  const end =
    far === null
      ? '?'
      : far.kind === 'terminal'
        ? far.label
        : `"${far.kind === 'words' ? far.text : ''}"`;
  return `${name} > ${end}`;
};

describe('a lead in one line', () => {
  test.each([
    ['blue ts3-2', 'blue > TS3-2'],
    ['blue', 'blue > ?'],
    ['blue ?', 'blue > ?'],
    ['blue not yet', 'blue > ?'],
    ['red/yel V2 pin 4', 'red/yellow > V2-4'],
    ['wht w/ red tracer to ts3 2', 'white/red > TS3-2'],
    ['white with a red tracer -> ts3-2', 'white/red > TS3-2'],
    ['dk blue v2-1', 'dark blue > V2-1'],
    ['blue T1 red', 'blue > T1 red'],
    ['red T1 red', 'red > T1 red'],
    ['black G3', 'black > chassis at G3'],
    ['brown into the loom', 'brown > "into the loom"'],
    ['bare to g3', 'bare bus > chassis at G3'],
    ['sleeved bus ts3-1', 'sleeved bus > TS3-1'],
    ['braid G3', 'braid > chassis at G3'],
    ['r', 'red > ?'],
    ['ts3-2', ' > TS3-2'],
    ['?', ' > ?'],
    ['resistor', 'resistor > ?'],
    ['resistor 47k v2-4', 'resistor 47k > V2-4'],
    ['resistor ts3-2', 'resistor > TS3-2'],
    ['r 2.2 meg ts3-1', 'resistor 2.2 meg > TS3-1'],
    ['resistor yellow violet orange silver ts3-1', 'resistor 47k > TS3-1'],
    ['cap 0.05 mfd G3', 'capacitor 0.05 mfd > chassis at G3'],
    ['c .01 uF not yet', 'capacitor .01 uF > ?'],
    ['choke to ts3-5', 'coil > TS3-5'],
    ['diode v2-2', 'rectifier > V2-2']
  ])('%s', (text, expected) => expect(short(text)).toBe(expected));

  test.each([['lots of wires'], ['rs'], ['']])('refuses "%s" and says the way out', (text) => {
    expect(short(text)).toMatch(/^refused: .*ts3-2/);
  });
});
