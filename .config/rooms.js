// The rooms of the house, lowest first, and what each may import. The lint rules and
// test/architecture.test.ts read this one table, so that the two cannot disagree.

/** @typedef {{ name: string, path: string, rooms: readonly string[], packages: readonly (string | RegExp)[] }} Room */

const below = (...names) => names;

/** @type {readonly Room[]} */
export const rooms = [
  { name: 'quantity', path: 'src/lib/quantity', rooms: [], packages: [] },
  {
    name: 'document',
    path: 'src/lib/document',
    rooms: below('quantity'),
    packages: ['zod', 'mutative', 'fractional-indexing', 'fflate', /^@noble\/hashes(\/|$)/]
  },
  { name: 'handbook', path: 'src/lib/handbook', rooms: [], packages: [] },
  {
    name: 'physics',
    path: 'src/lib/physics',
    rooms: below('quantity', 'handbook'),
    packages: ['zod', 'd3-hierarchy']
  },
  {
    name: 'intake',
    path: 'src/lib/intake',
    rooms: below('quantity', 'document', 'handbook'),
    packages: ['papaparse', 'fractional-indexing', 'read-excel-file/universal']
  },
  {
    name: 'study',
    path: 'src/lib/study',
    rooms: below('quantity', 'document', 'handbook', 'physics'),
    packages: ['rbush', 'flatqueue', 'd3-hierarchy']
  },
  {
    name: 'checks',
    path: 'src/lib/checks',
    rooms: below('quantity', 'document', 'handbook', 'physics', 'study'),
    packages: []
  },
  {
    name: 'plan',
    path: 'src/lib/plan',
    rooms: below('quantity', 'document', 'handbook', 'physics', 'study', 'checks'),
    packages: []
  },
  {
    name: 'drawing',
    path: 'src/lib/drawing',
    rooms: below('quantity', 'document', 'handbook', 'physics', 'study', 'checks'),
    packages: ['elkjs/lib/elk-api.js', 'rbush', 'flatqueue', 'pdfkit', 'fflate']
  },
  {
    name: 'paperwork',
    path: 'src/lib/paperwork',
    rooms: below(
      'quantity',
      'document',
      'handbook',
      'physics',
      'study',
      'checks',
      'plan',
      'drawing'
    ),
    packages: ['papaparse', 'uqr', 'write-excel-file/universal', /^@noble\/hashes(\/|$)/]
  },
  {
    name: 'storage',
    path: 'src/lib/storage',
    rooms: below('quantity', 'document'),
    packages: ['idb', 'fflate']
  },
  {
    name: 'editor',
    path: 'src/lib/editor',
    rooms: below(
      'quantity',
      'document',
      'handbook',
      'physics',
      'intake',
      'study',
      'checks',
      'plan',
      'drawing',
      'paperwork',
      'storage'
    ),
    packages: [
      /^svelte(\/|$)/,
      /^konva(\/|$)/,
      /^\$app\//,
      /^@fontsource\//,
      /^elkjs\/lib\/elk-(api\.js|worker\.min\.js\?url)$/,
      'papaparse',
      'rbush'
    ]
  },
  {
    name: 'cli',
    path: 'src/cli',
    rooms: below(
      'quantity',
      'document',
      'handbook',
      'physics',
      'intake',
      'study',
      'checks',
      'plan',
      'drawing',
      'paperwork',
      'storage'
    ),
    packages: [/^node:/, 'elkjs/lib/elk-api.js']
  },
  {
    name: 'routes',
    path: 'src/routes',
    rooms: below('editor'),
    packages: [/^\$app\//, /^@sveltejs\/kit$/, /^svelte(\/|$)/]
  }
];

/** The room that a file belongs to, or undefined for files outside all rooms.
 *  @param {string} file with forward slashes, from the top of the tree */
export const roomOf = (file) => rooms.find((room) => file.startsWith(`${room.path}/`));

/** Why `room` may not import `specifier`, or undefined where it may. Relative imports must stay inside.
 *  @param {Room} room @param {string} specifier @param {string} file */
export const whyForbidden = (room, specifier, file) => {
  if (specifier.startsWith('#')) {
    const target = specifier.slice(1).split('/')[0];
    if (target === room.name) return 'inside a room imports are relative';
    return room.rooms.includes(target)
      ? undefined
      : `${room.name} may not know ${target}: imports run up the list of rooms only`;
  }
  if (specifier.startsWith('.')) {
    const parts = file.split('/').slice(0, -1);
    for (const step of specifier.split('/')) {
      if (step === '..') parts.pop();
      else if (step !== '.') parts.push(step);
    }
    return parts.join('/').startsWith(`${room.path}/`)
      ? undefined
      : 'a relative import may not leave its room: write #room/file.ts';
  }
  return room.packages.some((allowed) =>
    typeof allowed === 'string' ? allowed === specifier : allowed.test(specifier)
  )
    ? undefined
    : `${room.name} may not use the package ${specifier}`;
};
