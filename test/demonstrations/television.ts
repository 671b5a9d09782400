// A 21-inch console television of 1956 or so, as it might lie on a bench half done. It never existed:
// the circuit is of its time, the set, its numbers and its faults are made up.
import type { ChassisDocument } from '#document/index.ts';
import { chassis } from '../helpers/chassis.ts';
import { addControls, addFrontAndBack } from './television/panels.ts';
import { addShelf } from './television/shelf.ts';
import { addUnits } from './television/frame.ts';
import { addHeaters } from './television/heaters.ts';
import { addHighVoltage } from './television/high-voltage.ts';
import { addHorizontal } from './television/horizontal.ts';
import { addPicture } from './television/picture.ts';
import { addPower } from './television/power.ts';
import { addReturns } from './television/returns.ts';
import { addSound } from './television/sound.ts';
import { addTuner } from './television/tuner.ts';
import { addVertical } from './television/vertical.ts';

export const buildTelevision = (): ChassisDocument => {
  const set = chassis({
    title: 'Console 21-K',
    set: '21-inch console television, invented for demonstration',
    chassis: '21-K',
    run: '3',
    tubes:
      '6BQ7A 6U8A 6CB6A 6CB6A 6CB6A 6AW8A 6AU6A 6AV6 6AQ5A 6CG7 6AQ5A 6AL5 6CG7 6DQ6B 6AX4GT 1B3GT 5U4GB 21ALP4',
    dataReference: 'none: the set never existed',
    tracedBy: 'the bench',
    setsChecked: 1,
    licence: 'free to copy and change',
    notes:
      'Heaters half rewired. Second-anode lead and the repair at the rectifier still to be made good.'
  });
  addUnits(set);
  addControls(set);
  addHeaters(set);
  addPower(set);
  addSound(set);
  addFrontAndBack(set);
  addPicture(set);
  addVertical(set);
  addHorizontal(set);
  addHighVoltage(set);
  addTuner(set);
  addReturns(set);
  addShelf(set);
  return set.build();
};
