// Plans of any length for measuring, made by a seeded generator: the same lines in every run, about as long as people write them.

/** Numbers from 0 up to 1, the same ones for the same seed. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A plan of exactly that many lines (at least 60) that can be read, hangs on four legs, and has a few findings. */
export function plan(lines: number, seed = 1): string {
  const next = random(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  const figure = (least: number, most: number): string => (least + next() * (most - least)).toFixed(0);
  const head = [
    '# A machine on its frame, as long as it is asked for; invented for measuring.',
    'plan "Move the test frame": date 2026-03-09, revision A, site "Hall 4", prepared by "Planning desk"',
    '  units metric',
    'let long = 6 m',
    'let wide = 2 m',
    'load "Frame"',
    '  datum "middle of the frame, underside of the rails; x towards the door, y towards the wall"',
    '  contingency 10 %',
    '  held by "nothing", released "stands free on timber, seen on site"',
  ];
  const tail = [
    '  pick NW: at (-2.5, 0.9, 0.2) m, capacity 40 t, kind lug, from "lug calculation"',
    '  pick NE: at (2.5, 0.9, 0.2) m, capacity 40 t, kind lug, from "lug calculation"',
    '  pick SW: at (-2.5, -0.9, 0.2) m, capacity 40 t, kind lug, from "lug calculation"',
    '  pick SE: at (2.5, -0.9, 0.2) m, capacity 40 t, kind lug, from "lug calculation"',
    'gear',
    '  block B1: weight 600 kg, capacity 200 t, from "register"',
    '  master link M1: weight 90 kg, capacity 120 t, length 500 mm, from "register"',
    '  sling S1..S4: length 6 m, weight 45 kg, capacity 60 t, from "register"',
    '  shackle K1..K4: weight 18 kg, capacity 55 t, from "register"',
    'rig',
    '  leg B1 > M1 > S1 > K1 > NW',
    '  leg B1 > M1 > S2 > K2 > NE',
    '  leg B1 > M1 > S3 > K3 > SW',
    '  leg B1 > M1 > S4 > K4 > SE',
    'expect sling angle >= 45 deg',
    'expect load tilt <= 5 deg',
    'expect load weight <= 1 kg', // fails, so that every change of a weight changes a finding
  ];
  const body: string[] = [];
  let n = 0;
  while (head.length + body.length + tail.length < lines) {
    n += 1;
    if (n % 40 === 1)
      body.push(
        `  # group ${n}: ${pick(['brackets and plates', 'the drive side', 'the service side', 'pipe supports'])}`,
      );
    const at = `at (${figure(-2400, 2400)}, ${figure(-900, 900)}, ${figure(0, 600)}) mm`;
    body.push(
      pick([
        `  part "Plate ${n}": plate ${figure(80, 400)} x ${figure(60, 300)} x ${figure(5, 20)} mm, of carbon steel, ${at}`,
        `  part "Box ${n}": box ${figure(100, 300)} mm x ${figure(100, 300)} mm x ${figure(10, 90)} mm, of aluminium alloy, ${at}`,
        `  part "Pin ${n}": cylinder, diameter ${figure(20, 90)} mm, length ${figure(50, 300)} mm, of carbon steel, ${at}`,
        `  part "Valve ${n}": item ${figure(2, 40)} kg, by maker data, from "data sheet ${n}", centre (0, 0, 0), ${at}`,
        `  part "Motor ${n}": item ${figure(5, 90)} lb, by drawing, from "drawing M-${n}", centre (0, 0, 0), ${at}`,
      ]),
    );
    if (n % 9 === 0) body.push(`    note "checked against the drawing on ${figure(1, 28)} March, sheet ${n}"`);
  }
  return `${[...head, ...body.slice(0, lines - head.length - tail.length), ...tail].join('\n')}\n`;
}

/** A JSON document of exactly that many lines for the peer; `dense`: with about as many characters a line as a plan has. */
export function jsonDocument(lines: number, dense: boolean, seed = 1): string {
  const next = random(seed);
  const rows = Array.from({ length: lines - 4 }, (_, n) => {
    const more = dense ? `, "material": "carbon steel", "drawing": "M-${n}, sheet 2"` : '';
    return `    { "name": "Plate ${n}", "weight": ${(next() * 900).toFixed(1)}${more} }${n < lines - 5 ? ',' : ''}`;
  });
  return `{\n  "parts": [\n${rows.join('\n')}\n  ]\n}`;
}

/** What that document has to be like; the weight of one part is looked up by its name. */
export const jsonSchema = {
  type: 'object',
  properties: {
    parts: {
      type: 'array',
      items: {
        type: 'object',
        required: ['name', 'weight'],
        properties: {
          name: { type: 'string', maxLength: 11 },
          weight: { type: 'number', maximum: 899 },
          material: { type: 'string' },
          drawing: { type: 'string' },
        },
        additionalProperties: false,
      },
    },
  },
};
