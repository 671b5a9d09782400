// The demonstrations as the files that the editor opens on a first visit.
import { saveDocument } from '#document/index.ts';
import { buildRadio } from './radio.ts';
import { buildTelevision } from './television.ts';
import { toWireList } from './wire-list.ts';

/** Name under static/demonstrations and text. */
export const buildDemonstrationFiles = (): ReadonlyMap<string, string> => {
  const television = buildTelevision();
  return new Map([
    ['console-21.chassis.json', saveDocument(television)],
    ['console-21.csv', toWireList(television)],
    ['five-tube-radio.chassis.json', saveDocument(buildRadio())]
  ]);
};
