// Lays out one graph with a general-purpose library: reads it on standard input, prints {layout, warmMs, dragMs}.
//   node --stack-size=8000 peer.mjs VARIANT MODULES < GRAPH.json
// MODULES is the folder in which the libraries were installed:
//   npm install --prefix MODULES elkjs@0.12.1 @dagrejs/dagre@3.1.3 libavoid-js@0.4.5
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [, , variant, modules = '.'] = process.argv;
const require = createRequire(join(resolve(modules), 'here.js'));
const CELL = 10; // pixels in a cell

// Where a terminal lies from the corner of its box.
const spot = (n, p) => ({ N: [p.offset, 0], S: [p.offset, n.h], W: [0, p.offset], E: [n.w, p.offset] })[p.side];

// Layered layout with orthogonal wires, terminals fixed, one cell between wires and two between boxes.
function elk({ zones = false, options = {} } = {}) {
  const engine = new (require('elkjs/lib/elk.bundled.js'))();
  const name = { N: 'NORTH', E: 'EAST', S: 'SOUTH', W: 'WEST' };
  const child = (n) => ({
    id: n.id, width: n.w * CELL, height: n.h * CELL,
    layoutOptions: { 'elk.portConstraints': n.ports.length ? 'FIXED_POS' : 'FREE', 'elk.nodeSize.constraints': '[]' },
    ports: n.ports.map((p) => ({
      id: `${n.id}:${p.id}`, width: 0, height: 0, x: spot(n, p)[0] * CELL, y: spot(n, p)[1] * CELL,
      layoutOptions: { 'elk.port.side': name[p.side] },
    })),
  });
  const layoutOptions = {
    'elk.algorithm': 'layered', 'elk.direction': 'RIGHT', 'elk.edgeRouting': 'ORTHOGONAL',
    'elk.spacing.nodeNode': '20', 'elk.spacing.edgeNode': '10', 'elk.spacing.edgeEdge': '10',
    'elk.layered.spacing.nodeNodeBetweenLayers': '20', 'elk.layered.spacing.edgeNodeBetweenLayers': '10',
    'elk.layered.spacing.edgeEdgeBetweenLayers': '10', 'elk.json.edgeCoords': 'ROOT', 'elk.json.shapeCoords': 'ROOT',
    ...(zones ? { 'elk.hierarchyHandling': 'INCLUDE_CHILDREN' } : {}), ...options,
  };
  const end = ([n, p]) => (p == null ? n : `${n}:${p}`);
  return async (g) => {
    const ids = new Set(zones ? (g.zones ?? []).map((z) => z.id) : []);
    const children = [...ids].map((z) => ({
      id: 'zone:' + z, layoutOptions: { 'elk.padding': '[top=20,left=20,bottom=20,right=20]' },
      children: g.nodes.filter((n) => n.zone === z).map(child),
    }));
    children.push(...g.nodes.filter((n) => !ids.has(n.zone)).map(child));
    const edges = g.edges.map((e) => ({ id: e.id, sources: [end(e.from)], targets: [end(e.to)] }));
    const lay = { nodes: {}, edges: {} };
    const walk = (v) => {
      for (const c of v.children ?? []) {
        lay.nodes[c.id] = { x: c.x / CELL, y: c.y / CELL };
        walk(c);
      }
      for (const e of v.edges ?? []) {
        const s = e.sections?.[0];
        if (s) lay.edges[e.id] = [s.startPoint, ...(s.bendPoints ?? []), s.endPoint].map((p) => [p.x / CELL, p.y / CELL]);
      }
    };
    walk(await engine.layout({ id: 'root', children, edges, layoutOptions }));
    return lay;
  };
}

// Layered layout without terminals; wires are oblique.
function dagre() {
  const lib = require('@dagrejs/dagre');
  return async (g) => {
    const d = new lib.graphlib.Graph({ multigraph: true });
    d.setGraph({ rankdir: 'LR', nodesep: 2, edgesep: 1, ranksep: 4 });
    d.setDefaultEdgeLabel(() => ({}));
    for (const n of g.nodes) d.setNode(n.id, { width: n.w, height: n.h });
    for (const e of g.edges) d.setEdge(e.from[0], e.to[0], {}, e.id);
    lib.layout(d);
    const lay = { nodes: {}, edges: {} };
    for (const n of g.nodes) lay.nodes[n.id] = { x: d.node(n.id).x - n.w / 2, y: d.node(n.id).y - n.h / 2 };
    for (const e of g.edges) lay.edges[e.id] = d.edge(e.from[0], e.to[0], e.id).points.map((p) => [p.x, p.y]);
    return lay;
  };
}

// Orthogonal routing over boxes that another library placed; times are those of routing alone.
async function avoid(placer) {
  const entry = require.resolve('libavoid-js').replace(/index\.js$/, 'index-node.mjs');
  const { AvoidLib } = await import(pathToFileURL(entry));
  await AvoidLib.load();
  const A = AvoidLib.getInstance();
  const way = { N: A.ConnDirUp, S: A.ConnDirDown, W: A.ConnDirLeft, E: A.ConnDirRight };
  let placed = null;
  const build = async (g) => {
    placed ??= await placer(g);
    const r = new A.Router(A.OrthogonalRouting);
    r.setRoutingParameter(A.segmentPenalty, 50);
    r.setRoutingParameter(A.crossingPenalty, 0);
    r.setRoutingParameter(A.fixedSharedPathPenalty, 110);
    r.setRoutingParameter(A.shapeBufferDistance, CELL / 2);
    r.setRoutingParameter(A.idealNudgingDistance, CELL);
    r.setRoutingOption(A.nudgeOrthogonalSegmentsConnectedToShapes, false);
    const shapes = new Map(), pins = new Map();
    for (const n of g.nodes) {
      const { x, y } = placed.nodes[n.id];
      const s = new A.ShapeRef(r, new A.Rectangle(new A.Point(x * CELL, y * CELL), new A.Point((x + n.w) * CELL, (y + n.h) * CELL)));
      shapes.set(n.id, s);
      n.ports.forEach((p, i) => {
        const [dx, dy] = spot(n, p);
        new A.ShapeConnectionPin(s, i + 1, dx * CELL, dy * CELL, false, 0, way[p.side]).setExclusive(false);
        pins.set(JSON.stringify([n.id, p.id]), i + 1);
      });
      if (!g.edges.some((e) => [e.from, e.to].some((x) => x[0] === n.id && x[1] == null))) continue;
      const free = n.ports.length + 1; // free ends: the middle of each side
      for (const [px, py, d] of [[0, 0.5, way.W], [1, 0.5, way.E], [0.5, 0, way.N], [0.5, 1, way.S]]) {
        new A.ShapeConnectionPin(s, free, px, py, true, 0, d).setExclusive(false);
      }
      pins.set(JSON.stringify([n.id, null]), free);
    }
    const end = (e) => new A.ConnEnd(shapes.get(e[0]), pins.get(JSON.stringify(e)));
    const wires = g.edges.map((e) => new A.ConnRef(r, end(e.from), end(e.to)));
    r.processTransaction();
    return { r, shapes, wires };
  };
  const layout = async (g) => {
    const b = await build(g);
    const lay = { nodes: placed.nodes, edges: {} };
    g.edges.forEach((e, i) => {
      const line = b.wires[i].displayRoute(), points = [];
      for (let k = 0; k < line.size(); k++) points.push([line.get_ps(k).x / CELL, line.get_ps(k).y / CELL]);
      lay.edges[e.id] = points;
    });
    A.destroy(b.r);
    return lay;
  };
  // The times of drawing the wires anew after one box moved by a cell.
  layout.drag = async (g, tries) => {
    const b = await build(g), ms = [], begin = performance.now();
    for (let i = 0; i < tries && performance.now() - begin < 5000; i++) {
      const start = performance.now();
      b.r.moveShape(b.shapes.get(g.nodes[(i * 7) % g.nodes.length].id), 0, i % 2 ? -CELL : CELL);
      b.r.processTransaction();
      ms.push(performance.now() - start);
    }
    A.destroy(b.r);
    return ms;
  };
  return layout;
}

const simplex = { 'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX' };
const variants = {
  'elk': () => elk(),
  'elk-ns': () => elk({ options: simplex }),
  'elk-best': () => elk({ options: { ...simplex, 'elk.layered.thoroughness': '100' } }),
  'elk-zones': () => elk({ zones: true }),
  'dagre': () => dagre(),
  'elk-ns+avoid': () => avoid(elk({ options: simplex })),
  'dagre+avoid': () => avoid(dagre()),
};
if (!variants[variant]) {
  console.error(`give one of ${Object.keys(variants).join(', ')}`);
  process.exit(2);
}

const g = JSON.parse(readFileSync(0, 'utf8'));
console.log = console.warn = () => {};
const median = (a) => a.sort((x, y) => x - y)[a.length >> 1];
const run = await variants[variant]();
const begin = performance.now();
let lay = await run(g);
const warm = [], cold = performance.now() - begin;
while (warm.length < (g.runs ?? 1) - 1 && cold < 10000 && performance.now() - begin < cold + 3000) {
  const start = performance.now();
  lay = await run(g);
  warm.push(performance.now() - start);
}
const out = { layout: lay, warmMs: warm.length ? median(warm) : cold };
if (run.drag && g.runs > 1) out.dragMs = median(await run.drag(g, 15));
process.stdout.write(JSON.stringify(out) + '\n', () => process.exit(0));
