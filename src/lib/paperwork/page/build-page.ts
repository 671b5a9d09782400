// A chassis as one page that anyone can open: drawings, schedule, findings, cautions, photos, readings and the
// document itself in a single file. No network and no script but our own; the page's own policy forbids others.
import { sha256 } from '@noble/hashes/sha2.js';
import { cautionsFor, type Finding } from '#checks/index.ts';
import { blockForPage, packText, saveDocument } from '#document/index.ts';
import { dataUri } from '#drawing/data-uri.ts';
import { toSvg, type DisplayList, type PictureAsset, type PictureFile } from '#drawing/index.ts';
import { escapeXmlText } from '#drawing/xml-text.ts';
import type { Study } from '#study/index.ts';
import { buildSchedule } from '../schedule.ts';
import { setLine } from '../sheets/page.ts';
import { buildClubFacts, copyrightWord } from './club-facts.ts';
import { buildPageData } from './page-data.ts';
import {
  factsHtml,
  findingsHtml,
  photosHtml,
  readingsHtml,
  scheduleHtml
} from './page-sections.ts';
import styles from './page.css?raw';
import script from './viewer.js?raw';

export interface PageDrawing {
  /** "Diagram", "To scale, from below". */
  readonly name: string;
  /** Without a foot: the page says beside it what the foot would. */
  readonly list: DisplayList;
}

export interface PageOptions {
  readonly drawings: readonly PageDrawing[];
  /** Pixels for the pictures of the drawings. */
  readonly pictures?: (asset: PictureAsset) => PictureFile | undefined;
  /** Pictures as they are kept, by hash, to be looked at. */
  readonly photos?: (hash: string) => PictureFile | undefined;
  /** Written as it is given. */
  readonly date?: string;
}

const policyHash = (text: string): string => {
  const bytes = sha256(new TextEncoder().encode(text));
  return `'sha256-${btoa(String.fromCharCode(...bytes))}'`;
};

/** JSON that can stand in a script element: nothing in it opens or closes markup. */
const jsonBlock = (id: string, value: unknown): string =>
  `<script type="application/json" id="${id}">${JSON.stringify(value).replaceAll('<', '\\u003c')}</script>`;

const legend = [
  ['300', '300 V'],
  ['600', '600 V'],
  ['1k-3k', '1 to 3 kV'],
  ['5k-15k', '5 to 15 kV'],
  ['20k', '20 kV and up'],
  ['unknown', 'not known']
] as const;

const drawingHtml = (): string => `<section id="drawing" aria-labelledby="drawing-heading">
<h2 id="drawing-heading">Drawing</h2>
<div class="tools">
<div class="choice" id="views" role="group" aria-label="Which drawing"></div>
<label class="search">Find <input id="find" type="search" autocomplete="off" placeholder="wire 12, V3, heater" aria-describedby="found-count"></label>
<label>Colour by <select id="colour-by"><option value="class">insulation class</option><option value="colour">insulation colour</option><option value="state">work state</option><option value="findings">findings</option></select></label>
<details class="layers"><summary>Layers</summary><div id="layers"></div></details>
<div class="choice" role="group" aria-label="Size"><button type="button" id="closer" aria-label="Closer">+</button><button type="button" id="farther" aria-label="Farther">−</button><button type="button" id="whole">All</button></div>
</div>
<p id="found-count" class="quiet" role="status"></p>
<div id="found"></div>
<div id="stage" tabindex="0" role="application" aria-label="The drawing: arrow keys move it, plus and minus size it, 0 shows all"><noscript>The drawing needs the page's own script.</noscript></div>
<p id="tag" role="status">Rest on a wire or press it to see what it is.</p>
<p class="legend" id="legend">${legend.map(([name, words]) => `<span><i class="line line-${name}"></i>${words}</span>`).join('')}</p>
</section>`;

/** The page as HTML text. The same study and options give the same text. */
export function buildPage(
  study: Study,
  findings: readonly Finding[],
  options: PageOptions
): string {
  const { document } = study;
  const title = escapeXmlText(document.identity.title);
  const drawings = options.drawings.map(({ name, list }) => ({
    name,
    svg: packText(
      toSvg(list, {
        theme: 'light',
        title: document.identity.title,
        ...(options.pictures ? { pictures: options.pictures } : {})
      })
    )
  }));
  const photos = Object.values(document.photos).flatMap(({ name, picture, notes }) => {
    const file = options.photos?.(picture.hash);
    return file ? [{ name, notes: notes ?? '', source: dataUri(file.bytes, file.type) }] : [];
  });
  const cautions = cautionsFor(document);
  const policy = [
    "default-src 'none'",
    `script-src ${policyHash(script)}`,
    `style-src ${policyHash(styles)}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'"
  ].join('; ');
  const sections = [
    ['facts', 'About', factsHtml(buildClubFacts(study, findings), copyrightWord)],
    ['drawing', 'Drawing', drawingHtml()],
    ['findings', 'Findings', findingsHtml(findings)],
    ['schedule', 'Schedule', scheduleHtml(study, buildSchedule(study, findings))],
    ['readings', 'Readings', readingsHtml(document)],
    ['photos', 'Photos', photosHtml(photos)],
    [
      'cautions',
      'Cautions',
      `<section id="cautions"><h2>Cautions</h2><dl>${cautions.map((caution) => `<dt>${escapeXmlText(caution.title)}</dt><dd>${escapeXmlText(caution.text)}</dd>`).join('')}</dl></section>`
    ]
  ].filter(([, , html]) => html !== '');
  const nav = sections.map(([id, name]) => `<a href="#${id}">${name}</a>`).join('');
  const date = options.date === undefined ? '' : `, ${escapeXmlText(options.date)}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${title}</title>
<style>${styles}</style>
</head>
<body>
<header><div><h1>${title}</h1><p class="quiet">${escapeXmlText(setLine(document))}${date}: ${study.index.wires.length} wires, ${study.index.parts.length} parts</p></div>
<nav aria-label="On this page">${nav}<button type="button" id="paper" aria-pressed="false">Night</button></nav></header>
<main>
<aside class="cautions-short" aria-label="Cautions">${cautions.map(({ short }) => escapeXmlText(short)).join(' ')}</aside>
${sections.map(([, , html]) => html).join('\n')}
</main>
<footer class="quiet">Written by Underchassis. This page holds the whole document: open the file there to go on working with it. Nothing here says that anything is safe.</footer>
${blockForPage(saveDocument(document))}
${drawings.map(({ name, svg }) => `<script type="text/plain" class="packed-drawing" data-name="${escapeXmlText(name)}">${svg}</script>`).join('\n')}
${jsonBlock('page-data', buildPageData(study, findings))}
<script>${script}</script>
</body>
</html>
`;
}
