// The five units of the television, and where its wires are held: millimetres, seen from below.
import type { ChassisBuilder } from '../../helpers/chassis.ts';

export const addUnits = (set: ChassisBuilder): void => {
  set
    .unit('Main chassis', { size: [460, 330], place: [150, 230] })
    .support('K1', 'clamp', [345, 195], { boreMm: 10 })
    .support('K2', 'clamp', [275, 150], { boreMm: 13 })
    .support('K3', 'clamp', [239, 105], { boreMm: 16 })
    .support('K4', 'clamp', [130, 120], { boreMm: 8 })
    .support('K5', 'tie', [205, 195])
    .support('K6', 'tie', [200, 262])
    .support('K7', 'tie', [60, 72])
    .support('G1', 'grommet', [145, 245], { boreMm: 13 })
    .support('G2', 'grommet', [6, 100], { boreMm: 10 })
    .support('G3', 'grommet', [239, 6], { boreMm: 13 })
    .support('G4', 'grommet', [178, 322], { boreMm: 13 })
    .support('G5', 'grommet', [24, 322], { boreMm: 16 })
    .ground('GL2', { at: [352, 312] })
    .ground('GL3', { at: [152, 312] })
    .ground('GL4', { at: [255, 14] })
    .ground('GL5', { at: [16, 120] })
    .unit('Tuner', { size: [95, 160], place: [20, 230], notes: 'Turret wiring not recorded.' })
    .support('K8', 'hole', [88, 130], { boreMm: 8 })
    .unit('Power unit', {
      metal: 'apart',
      size: [230, 150],
      place: [630, 410],
      notes: 'On the cabinet floor. Its metal reaches the chassis by the cable and by nothing else.'
    })
    .ground('GL1', { at: [22, 128] })
    .unit('Picture tube and yoke', { metal: 'none', size: [240, 200], place: [250, 600] })
    .unit('Front and rear panels', {
      metal: 'apart',
      size: [280, 200],
      place: [250, 10],
      notes:
        'Controls and speaker in front, antenna board behind. The steel bracket of the controls reaches the chassis by its braid alone.'
    })
    .support('K9', 'clamp', [135, 180], { boreMm: 10 })
    .ground('GL6', { at: [245, 178] });
};
