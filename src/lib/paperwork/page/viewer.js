// The script of the one-file page: unpacks the drawings, moves and sizes them, finds, colours and sorts.
// It goes into the page as it stands here. What comes from the document is only ever set as text.
(() => {
  'use strict';
  const byId = (id) => document.getElementById(id);
  const make = (name, words, fields = {}) =>
    Object.assign(document.createElement(name), { textContent: words, ...fields });
  const data = JSON.parse(byId('page-data').textContent);
  const stage = byId('stage');
  const tag = byId('tag');
  const wires = new Map(data.wires.map((wire) => [wire.id, wire]));
  const parts = new Map(data.parts.map((part) => [part.id, part]));
  const states = {
    found: '#75839b',
    tagged: '#3f1cb1',
    removed: '#a67b1b',
    fitted: '#007764',
    checked: '#1b222b'
  };
  const severities = { danger: '#9a031b', fault: '#8a4f00', caution: '#6a5a12', note: '#49606b' };
  let svg = null;
  let box = { x: 0, y: 0, width: 100, height: 100 };
  let whole = box;
  let picked = null;

  const unpack = async (letters) => {
    const base64 = letters.slice(1).replaceAll('-', '+').replaceAll('_', '/');
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
    return new Response(stream).text();
  };
  const show = () => svg?.setAttribute('viewBox', `${box.x} ${box.y} ${box.width} ${box.height}`);
  const zoom = (by, x = 0.5, y = 0.5) => {
    const width = Math.min(Math.max(box.width * by, 20), whole.width * 1.5);
    const scale = width / box.width;
    box = {
      x: box.x + box.width * (1 - scale) * x,
      y: box.y + box.height * (1 - scale) * y,
      width,
      height: box.height * scale
    };
    show();
  };
  const fit = () => {
    box = { ...whole };
    show();
  };
  const move = (dx, dy) => {
    box = { ...box, x: box.x - dx, y: box.y - dy };
    show();
  };
  /** Millimetres of the drawing for a pixel of the screen. */
  const perPixel = () => Math.max(box.width / stage.clientWidth, box.height / stage.clientHeight);
  const share = (event) => {
    const edge = stage.getBoundingClientRect();
    const per = perPixel();
    const middle = { x: edge.left + edge.width / 2, y: edge.top + edge.height / 2 };
    return [
      0.5 + ((event.clientX - middle.x) * per) / box.width,
      0.5 + ((event.clientY - middle.y) * per) / box.height
    ];
  };

  const subjectOf = (node) => {
    const group = node instanceof Element ? node.closest('g.wire, g.part, g.terminal') : null;
    if (!group || !stage.contains(group)) return null;
    const [, kind, id] = /^(wire|part|terminal)-(.*?)(?:_\d+)?$/.exec(group.id) ?? [];
    return kind
      ? { kind, id, title: group.querySelector(':scope > title')?.textContent ?? '' }
      : null;
  };
  const groupsOf = ({ kind, id }) =>
    [...stage.querySelectorAll(`g.${kind}`)].filter(
      (group) => group.id === `${kind}-${id}` || group.id.startsWith(`${kind}-${id}_`)
    );
  const light = (subjects) => {
    for (const group of stage.querySelectorAll('g.lit')) group.classList.remove('lit');
    for (const subject of subjects)
      for (const group of groupsOf(subject)) group.classList.add('lit');
    stage.classList.toggle('quiet-rest', subjects.length > 0);
  };
  const nameOf = ({ kind, id, title = '' }) => {
    if (title) return title;
    const known = kind === 'wire' ? wires.get(id) : parts.get(id);
    return known ? `${kind} ${known.number ?? known.name}, ${known.words}` : '';
  };
  const pick = (subject) => {
    picked = subject;
    light(subject ? [subject] : []);
    tag.textContent = subject ? nameOf(subject) : 'Rest on a wire or press it to see what it is.';
  };
  const goTo = (subject) => {
    pick(subject);
    const boxes = groupsOf(subject)
      .map((group) => group.getBBox())
      .filter(({ width, height }) => width + height > 0);
    if (boxes.length === 0) {
      tag.textContent = `${nameOf(subject)}: not on this drawing`;
      return;
    }
    const left = Math.min(...boxes.map((one) => one.x));
    const top = Math.min(...boxes.map((one) => one.y));
    const width = Math.max(...boxes.map((one) => one.x + one.width)) - left;
    const height = Math.max(...boxes.map((one) => one.y + one.height)) - top;
    const room = Math.max(width * 0.2, height * 0.2, 25);
    box = { x: left - room, y: top - room, width: width + 2 * room, height: height + 2 * room };
    show();
    stage.scrollIntoView({ block: 'nearest' });
  };

  const colourBy = (way) => {
    for (const wire of data.wires) {
      const ink =
        way === 'colour'
          ? (wire.colour ?? '#b9ad90')
          : way === 'state'
            ? (states[wire.state] ?? '#1b222b')
            : way === 'findings'
              ? (severities[wire.worst] ?? '#b9ad90')
              : '';
      for (const group of groupsOf({ kind: 'wire', id: wire.id }))
        for (const line of group.querySelectorAll('polyline, path'))
          if (line.closest('#layer-wires') && line.getAttribute('stroke') === wire.ink)
            line.style.stroke = ink;
    }
    const legend = byId('legend');
    const entry = (ink, words) => {
      const span = document.createElement('span');
      const swatch = make('i', '', { className: 'swatch' });
      swatch.style.background = ink;
      span.append(swatch, words);
      return span;
    };
    if (way === 'class') legend.replaceChildren(...classLegend);
    else if (way === 'colour')
      legend.replaceChildren(
        entry('#b9ad90', 'colour not written down; others as the insulation is')
      );
    else if (way === 'state')
      legend.replaceChildren(...Object.entries(states).map(([words, ink]) => entry(ink, words)));
    else
      legend.replaceChildren(
        ...Object.entries(severities).map(([words, ink]) => entry(ink, words)),
        entry('#b9ad90', 'no finding, which is not to say safe')
      );
  };
  const classLegend = [...byId('legend').childNodes];

  const listLayers = () => {
    const names = {
      photos: 'photos',
      supports: 'supports',
      numbers: 'wire numbers',
      findings: 'findings',
      wires: 'wires',
      parts: 'parts',
      units: 'units',
      grounds: 'grounds'
    };
    const rows = Object.entries(names).flatMap(([layer, words]) => {
      const group = svg.querySelector(`#layer-${layer}`);
      if (!group) return [];
      const label = document.createElement('label');
      const tick = make('input', '', { type: 'checkbox', checked: true });
      tick.addEventListener('change', () => {
        group.style.display = tick.checked ? '' : 'none';
      });
      label.append(tick, words);
      return [label];
    });
    byId('layers').replaceChildren(...rows);
  };

  const drawings = [...document.querySelectorAll('.packed-drawing')];
  const views = byId('views');
  const choose = async (index) => {
    const source = drawings[index];
    if (!source) return;
    for (const [at, button] of [...views.children].entries())
      button.setAttribute('aria-pressed', String(at === index));
    if (typeof DecompressionStream === 'undefined') {
      stage.textContent =
        'This browser is too old to unpack the drawing. The schedule below is whole.';
      return;
    }
    const text = await unpack(source.textContent.trim());
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    svg = document.importNode(parsed, true);
    const [x, y, width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
    whole = { x, y, width, height };
    svg.removeAttribute('width');
    svg.removeAttribute('height');
    stage.replaceChildren(svg);
    fit();
    listLayers();
    colourBy(byId('colour-by').value);
    if (picked) light([picked]);
    stage.dataset.ready = source.dataset.name;
  };
  drawings.forEach((source, index) => {
    const button = make('button', source.dataset.name, { type: 'button' });
    button.addEventListener('click', () => void choose(index));
    views.append(button);
  });

  // Fingers and mouse: one moves, two size.
  const down = new Map();
  let moved = 0;
  stage.addEventListener('pointerdown', (event) => {
    down.set(event.pointerId, event);
    moved = 0;
    stage.setPointerCapture(event.pointerId);
  });
  stage.addEventListener('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (!before) {
      if (!picked) {
        const over = subjectOf(event.target);
        tag.textContent = over ? nameOf(over) : 'Rest on a wire or press it to see what it is.';
        light(over ? [over] : []);
      }
      return;
    }
    const [other] = [...down.values()].filter(({ pointerId }) => pointerId !== event.pointerId);
    if (other) {
      const apart = (one) => Math.hypot(one.clientX - other.clientX, one.clientY - other.clientY);
      if (apart(event) > 5)
        zoom(
          apart(before) / apart(event),
          ...share({
            clientX: (event.clientX + other.clientX) / 2,
            clientY: (event.clientY + other.clientY) / 2
          })
        );
    } else
      move(
        (event.clientX - before.clientX) * perPixel(),
        (event.clientY - before.clientY) * perPixel()
      );
    moved += Math.abs(event.clientX - before.clientX) + Math.abs(event.clientY - before.clientY);
    down.set(event.pointerId, event);
  });
  const up = (event) => {
    const was = down.delete(event.pointerId);
    if (was && moved < 6 && event.type === 'pointerup')
      pick(subjectOf(document.elementFromPoint(event.clientX, event.clientY)));
  };
  stage.addEventListener('pointerup', up);
  stage.addEventListener('pointercancel', up);
  stage.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      zoom(event.deltaY > 0 ? 1.15 : 1 / 1.15, ...share(event));
    },
    { passive: false }
  );
  stage.addEventListener('keydown', (event) => {
    const step = box.width / 12;
    const act = {
      ArrowLeft: () => move(step, 0),
      ArrowRight: () => move(-step, 0),
      ArrowUp: () => move(0, step),
      ArrowDown: () => move(0, -step),
      '+': () => zoom(1 / 1.25),
      '=': () => zoom(1 / 1.25),
      '-': () => zoom(1.25),
      0: fit,
      Escape: () => pick(null)
    }[event.key];
    if (act) {
      event.preventDefault();
      act();
    }
  });
  byId('closer').addEventListener('click', () => zoom(1 / 1.3));
  byId('farther').addEventListener('click', () => zoom(1.3));
  byId('whole').addEventListener('click', () => {
    pick(null);
    fit();
  });
  byId('colour-by').addEventListener('change', (event) => colourBy(event.target.value));

  const find = byId('find');
  const search = () => {
    const asked = find.value.trim().toLowerCase();
    const bare = asked.replace(/^wire\s+/, '');
    const named = (subject, name, words) => ({
      ...subject,
      isExact: name.toLowerCase() === bare,
      isHit: name.toLowerCase() === bare || words.toLowerCase().includes(asked)
    });
    const all = [
      ...data.parts.map(({ id, name, words }) =>
        named({ kind: 'part', id, label: name }, name, words)
      ),
      ...data.wires.map(({ id, number, words }) =>
        named({ kind: 'wire', id, label: `wire ${number}` }, number, words)
      )
    ];
    const hits =
      asked === ''
        ? []
        : all.filter(({ isHit }) => isHit).sort((a, b) => Number(b.isExact) - Number(a.isExact));
    light(hits);
    byId('found-count').textContent = asked === '' ? '' : `${hits.length} found`;
    byId('found').replaceChildren(
      ...hits.slice(0, 12).map((hit) => {
        const button = make('button', hit.label, { type: 'button' });
        button.addEventListener('click', () => goTo(hit));
        return button;
      })
    );
    return hits;
  };
  find.addEventListener('input', search);
  find.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') {
      const [first] = search();
      if (first) goTo(first);
    }
  });

  document.addEventListener('click', (event) => {
    const go = event.target instanceof Element ? event.target.closest('button.go') : null;
    if (go) {
      goTo({ kind: go.dataset.kind, id: go.dataset.id });
      byId('drawing').scrollIntoView();
    }
  });

  const table = byId('wires').tBodies[0];
  const rows = [...table.rows];
  const order = new Intl.Collator('en', { numeric: true });
  const heads = [...document.querySelectorAll('.sort')];
  heads.forEach((head, column) =>
    head.addEventListener('click', () => {
      const way = head.dataset.way === 'up' ? 'down' : 'up';
      for (const other of heads) {
        delete other.dataset.way;
        other.parentElement.removeAttribute('aria-sort');
      }
      head.dataset.way = way;
      head.parentElement.setAttribute('aria-sort', way === 'up' ? 'ascending' : 'descending');
      const sign = way === 'up' ? 1 : -1;
      // An empty cell comes last, whichever way round.
      rows.sort((a, b) => {
        const [one, two] = [a, b].map((row) => row.cells[column].textContent);
        return one === '' || two === ''
          ? Number(one === '') - Number(two === '')
          : sign * order.compare(one, two);
      });
      table.append(...rows);
    })
  );
  byId('filter').addEventListener('input', (event) => {
    const asked = event.target.value.trim().toLowerCase();
    let shown = 0;
    for (const row of rows) {
      row.hidden = !row.textContent.toLowerCase().includes(asked);
      if (!row.hidden) shown++;
    }
    byId('row-count').textContent =
      asked === '' ? `${rows.length} wires` : `${shown} of ${rows.length} wires`;
  });

  const paper = byId('paper');
  const setPaper = (isNight) => {
    if (isNight) document.documentElement.dataset.paper = 'night';
    else delete document.documentElement.dataset.paper;
    paper.setAttribute('aria-pressed', String(isNight));
  };
  setPaper(matchMedia('(prefers-color-scheme: dark)').matches);
  paper.addEventListener('click', () =>
    setPaper(document.documentElement.dataset.paper !== 'night')
  );
  void choose(0);
})();
