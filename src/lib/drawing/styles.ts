// What a style name means on each paper: stroke, fill, width and dash. Display lists carry names;
// only the writers ask for colours. A class band differs from every other in colour, dash and width.
import { colourHexes } from '#handbook/index.ts';
import { classBands, type ClassBand } from '#study/index.ts';
import { blackInks, inks, type Inks, type ThemeName } from './inks.ts';

export interface Style {
  /** A colour, or undefined for no line. */
  readonly stroke?: string;
  /** A colour, or undefined for no filling. Texts are filled. */
  readonly fill?: string;
  /** Width of the line, mm. */
  readonly width?: number;
  /** Lengths of dash and gap in turn, mm; none for a whole line. */
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
}

interface BandLine {
  readonly width: number;
  readonly dash?: readonly number[];
  readonly cap?: 'round';
}

/** How a wire of each band is drawn, colour apart: in grey these alone tell the bands. */
export const bandLines: Readonly<Record<ClassBand, BandLine>> = {
  '300': { width: 0.38 },
  '600': { width: 0.62, dash: [14, 0.9] },
  '1k-3k': { width: 0.8, dash: [4.2, 1.3] },
  '5k-15k': { width: 0.95, dash: [6, 1.2, 1.3, 1.2] },
  '20k+': { width: 1.35, dash: [22, 1] },
  'not known': { width: 0.5, dash: [0.05, 1.25], cap: 'round' }
};

const haloWidth = 2.5;

const line = (stroke: string, width: number): Style => ({ stroke, width });
const shape = (stroke: string, fill: string, width = 0.32): Style => ({ stroke, fill, width });
const text = (fill: string): Style => ({ fill });

/** A wire whose colour tells something else than its class: dash and width are still the class's. In black
 *  alone colours tell nothing. */
const toneStyles = (ink: Inks, band: ClassBand): [string, Style][] => [
  [`wire.${band}.edge`, { stroke: ink.softInk, width: bandLines[band].width + 0.45 }],
  ...classBands.map((tint): [string, Style] => [
    `wire.${band}.tint.${tint}`,
    { ...bandLines[band], stroke: ink.wires[tint] }
  ]),
  ...Object.entries(colourHexes).map(([name, hex]): [string, Style] => [
    `wire.${band}.hue.${name}`,
    { ...bandLines[band], stroke: ink === blackInks ? ink.ink : hex }
  ])
];

const bandStyles = (ink: Inks): [string, Style][] =>
  classBands.flatMap((band): [string, Style][] => {
    const colour = ink.wires[band];
    return [
      [`wire.${band}`, { stroke: colour, ...bandLines[band] }],
      ...toneStyles(ink, band),
      // Clears what a wire crosses, so that the eye can follow it.
      [`wire.${band}.gap`, { stroke: ink.unit, width: bandLines[band].width + 0.9 }],
      [`number.${band}.box`, shape(colour, ink.part, band === '20k+' ? 0.45 : 0.26)],
      [`number.${band}.text`, text(ink.ink)],
      [`number.${band}.step`, text(ink.softInk)]
    ];
  });

const severityStyles = (ink: Inks): [string, Style][] =>
  (['danger', 'fault', 'caution', 'note'] as const).flatMap((severity): [string, Style][] => [
    [`finding.${severity}.disc`, shape(ink.paper, ink[severity], 0.3)],
    [`finding.${severity}.text`, text(ink.onMark)],
    [`finding.${severity}.word`, text(ink[severity])]
  ]);

const partStyles = (ink: Inks): Record<string, Style> => ({
  'part.body': shape(ink.ink, ink.part, 0.36),
  'part.socket': shape(ink.ink, ink.part, 0.4),
  'part.board': shape(ink.ink, ink.bar, 0.36),
  'part.plug': shape(ink.ink, ink.part, 0.4),
  'part.shell': shape(ink.ink, ink.ink, 0.3),
  'part.bar': shape(ink.ink, ink.bar, 0.3),
  'part.lug': shape(ink.ink, ink.part, 0.32),
  'part.foot': shape(ink.ink, ink.spare, 0.32),
  'part.line': { ...line(ink.ink, 0.36), cap: 'round' },
  'part.line.ring': line(ink.ink, 0.32),
  'part.track': { ...line(ink.ink, 0.8), cap: 'round' },
  'part.plate': line(ink.ink, 0.62),
  'part.fine': line(ink.softInk, 0.22),
  'part.solid': shape(ink.ink, ink.ink, 0.2),
  'part.dot': shape(ink.ink, ink.ink, 0.2),
  'part.key': shape(ink.ink, ink.ink, 0.2),
  'part.button': shape(ink.ink, ink.wires['20k+'], 0.36),
  'part.cap': shape(ink.ink, ink.part, 0.36),
  'part.pin': shape(ink.ink, ink.part, 0.3),
  'part.pin.male': shape(ink.ink, ink.ink, 0.3),
  'part.pin.spare': shape(ink.spare, ink.part, 0.26),
  'part.pin.name': text(ink.ink),
  'part.pin.name.spare': text(ink.faintInk),
  'part.reference': text(ink.ink),
  'part.kind': text(ink.softInk),
  'part.function': text(ink.softInk),
  component: text(ink.softInk),
  note: text(ink.softInk)
});

const lineStyles = (ink: Inks): Record<string, Style> => ({
  'wire.20k+.halo': { stroke: ink.halo, width: haloWidth },
  lead: line(ink.softInk, 0.3),
  trunk: { ...line(ink.accent, 1.5), cap: 'round' },
  mates: { ...line(ink.accent, 1.5), cap: 'round' },
  'cable.casing.edge': line(ink.casingEdge, 2.1),
  'cable.casing': line(ink.casing, 1.7),
  'cable.name': text(ink.softInk),
  'cable.name.box': shape(ink.casingEdge, ink.part, 0.22),
  'trunk.name': text(ink.accent),
  'trunk.name.box': shape(ink.accent, ink.part, 0.26),
  'ground.bar': { ...line(ink.ink, 0.42), cap: 'round' },
  'free.ring': shape(ink.ink, ink.part, 0.36),
  'free.text': text(ink.ink)
});

const sheetStyles = (ink: Inks): Record<string, Style> => ({
  paper: { fill: ink.paper },
  'unit.box': shape(ink.unitEdge, ink.unit, 0.4),
  'unit.outline': line(ink.unitEdge, 0.4),
  'unit.name': text(ink.softInk),
  'photo.frame': { ...line(ink.faintInk, 0.3), dash: [2, 1.4] },
  'photo.name': text(ink.softInk),
  'photo.plate': shape(ink.unitEdge, ink.paper, 0.2),
  'photo.note': text(ink.caution),
  'support.mark': shape(ink.softInk, ink.bar, 0.26),
  'support.bore': shape(ink.softInk, ink.paper, 0.3),
  'support.name': text(ink.softInk),
  'tray.box': { ...shape(ink.faintInk, ink.paper, 0.3), dash: [2, 1.4] },
  'tray.name': text(ink.faintInk),
  'frame.line': line(ink.ink, 0.35),
  'frame.fine': line(ink.faintInk, 0.2),
  'frame.title': text(ink.ink),
  'frame.text': text(ink.ink),
  'frame.small': text(ink.softInk),
  'caution.box': shape(ink.danger, ink.dangerWash, 0.4),
  'caution.text': text(ink.danger)
});

/** What two documents differ in. Beside colour, the dash and the words of the legend tell them apart. */
const changeStyles = (ink: Inks): Record<string, Style> => ({
  'change.added': { ...line(ink.accent, 0.9), cap: 'round' },
  'change.changed': { ...line(ink.fault, 0.9), dash: [2.4, 1.2] },
  'change.removed': { ...line(ink.danger, 0.9), dash: [0.6, 1] },
  'change.text': text(ink.ink)
});

/** What is in the hand and not yet on the drawing. */
const handStyles = (ink: Inks): Record<string, Style> => ({
  'hand.line': { ...line(ink.accent, 0.4), cap: 'round' },
  // Keeps a line readable on a photo.
  'hand.under': { ...line(ink.part, 1.2), cap: 'round' },
  'hand.loose': { ...line(ink.accent, 0.4), dash: [1.6, 1.2] },
  'hand.guide': { ...line(ink.accent, 0.2), dash: [1, 1] },
  'hand.box': { ...line(ink.accent, 0.3), dash: [1.6, 1.2] },
  'hand.chosen': { ...line(ink.casingEdge, 2.2), cap: 'round' },
  'hand.ring': line(ink.accent, 0.5),
  'hand.grip': shape(ink.accent, ink.part, 0.4),
  'hand.name': text(ink.accent)
});

const buildTable = (ink: Inks): ReadonlyMap<string, Style> =>
  new Map([
    ...bandStyles(ink),
    ...severityStyles(ink),
    ...Object.entries(partStyles(ink)),
    ...Object.entries(lineStyles(ink)),
    ...Object.entries(sheetStyles(ink)),
    ...Object.entries(changeStyles(ink)),
    ...Object.entries(handStyles(ink))
  ]);

/** What files and paper may be drawn in: the themes of the screen, and black alone. */
export const paperThemes = ['print', 'black', 'light', 'dark'] as const;
export type PaperTheme = ThemeName | 'black';

const tables: Readonly<Record<PaperTheme, ReadonlyMap<string, Style>>> = {
  black: buildTable(blackInks),
  light: buildTable(inks.light),
  dark: buildTable(inks.dark),
  print: buildTable(inks.print)
};

/** The look of a style name on a theme's paper. A name that this version does not know is drawn in
 *  plain ink, so that nothing disappears. */
export const styleOf = (name: string, theme: PaperTheme): Style =>
  tables[theme].get(name) ??
  shape(theme === 'black' ? blackInks.ink : inks[theme].ink, 'none', 0.3);

/** All style names, for tests and for writers that prepare them beforehand. */
export const styleNames: readonly string[] = [...tables.light.keys()];
