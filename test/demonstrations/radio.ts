// A five-tube table set for 117 V ac or dc, about 1950. It never existed. The heaters are in series
// across the line, and B- is no more on the chassis than a resistor and a capacitor put it there:
// with the switch in the return lead, what is live depends on the switch and on the plug.
import type { ChassisDocument } from '#document/index.ts';
import { chassis } from '../helpers/chassis.ts';
import { addRadioParts } from './radio/parts.ts';
import { addRadioWires } from './radio/wires.ts';

export const buildRadio = (): ChassisDocument => {
  const set = chassis({
    title: 'Five-tube table set',
    set: 'ac-dc table radio, invented for demonstration',
    chassis: '5-T',
    tubes: '12BE6 12BA6 12AV6 50C5 35W4',
    dataReference: 'none: the set never existed',
    tracedBy: 'the bench',
    setsChecked: 1,
    licence: 'free to copy and change',
    notes:
      'B- floats. Work on it through an isolation transformer, and never with one hand on the chassis.'
  });
  addRadioParts(set);
  addRadioWires(set);
  return set.build();
};
