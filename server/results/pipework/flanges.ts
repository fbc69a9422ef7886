// Flanges, nozzles and manways: their dimensions by size, class and form.
import type { FlangeForm, FlangeSize, Pipe } from '../../catalog/index.ts';
import type { Flange, Manway, Nozzle } from '../../mechanics/shapes-of-pipework.ts';
import { boltSetBody, noStud } from './bolting.ts';
import { flangeSource, flangeTable, massOf, sized, steelOf, welded } from './looked-up.ts';
import { type BoughtIn, type Due, type NotListed, type Sizes, sidesOf, sizeOf, type Written } from './types.ts';

/** A flange of a form, on a pipe where the form asks for one. */
function flangeBody(size: FlangeSize, form: FlangeForm, stub: Pipe | null, thicker = size.thicker): Flange {
  const own = size.forms[form] as NonNullable<FlangeSize['forms'][FlangeForm]>;
  const least = form === 'lap joint' ? size.lapThickness : size.thickness;
  const hub = form === 'blind' ? 0 : size.hub;
  const outside = stub?.outside ?? 0;
  return {
    kind: 'flange',
    outside: size.outside,
    thickness: least + thicker,
    raisedFace: form === 'lap joint' ? 0 : size.raisedFace,
    faceHeight: form === 'lap joint' ? 0 : size.faceHeight,
    hub,
    neck: form === 'weld neck' ? outside : hub,
    hubLength: Math.max(0, own.length - least),
    bore: own.bore ?? outside - 2 * (stub?.wall ?? 0),
  };
}

const undrilled = 'as thick as the standard allows, bolt holes not taken off';
const thickest = `with its raised face, ${undrilled}`;

/** What the bolt holes of one flange of the least thickness would take off, m3. */
const drilled = ({ holes, hole, thickness }: FlangeSize): number => (Math.PI / 4) * holes * hole * hole * thickness;

/** The share that a list has some of these flanges heavier than as thick as the standard allows; none where none is. */
function listedOver(size: FlangeSize, forms: readonly FlangeForm[], stub: Pipe | null): Pick<BoughtIn, 'allowance'> {
  const factors = forms.map((form) => {
    const listed = size.forms[form]?.listed ?? 0;
    return listed / (massOf(flangeBody(size, form, form === 'blind' ? null : stub), 'carbon steel') ?? Number.NaN);
  });
  const factor = Math.max(...factors);
  return factor > 1 ? { allowance: { factor, source: size.listedSource } } : {};
}

/** The pipe that sets the bore: as said, and of a thread or socket standard pipe where nothing is said; none for other forms. */
function boredToPipe(size: FlangeSize, form: FlangeForm, schedule: string | null | undefined) {
  if (size.forms[form]?.bore !== null) return null;
  return welded(size.designation, form === 'weld neck' ? schedule : (schedule ?? 'STD'));
}

export function flangeOf(written: Written): BoughtIn | NotListed | Due {
  const size = sized(written, 'flange');
  if ('table' in size) return size;
  const form = written.words.form as FlangeForm;
  if (!size.forms[form])
    return {
      clause: 'form',
      designation: `${size.designation} class ${size.pressureClass} ${form}`,
      table: flangeTable,
      nearest: Object.keys(size.forms),
    };
  const stub = boredToPipe(size, form, written.words.schedule);
  if (stub && !('wall' in stub)) return stub;
  const body = (thicker?: number): Flange => flangeBody(size, form, stub, thicker);
  return {
    make: () => body(),
    least: () => body(0),
    drilled: drilled(size),
    ...listedOver(size, [form], stub),
    source: flangeSource(size),
    assumptions: [form === 'lap joint' ? undrilled : thickest],
    material: steelOf(written.words.schedule),
  };
}

export function nozzleOf(name: 'nozzle' | 'manway', written: Written): BoughtIn | NotListed | Due {
  const size = sized(written, name);
  if ('table' in size) return size;
  const form = (written.words.form ?? 'weld neck') as FlangeForm;
  if (!size.forms[form])
    return {
      clause: 'form',
      designation: `${size.designation} class ${size.pressureClass} ${form}`,
      table: flangeTable,
      nearest: Object.keys(size.forms).filter((one) => one === 'weld neck' || one === 'slip on'),
    };
  const stub = welded(size.designation, written.words.schedule);
  if (!('wall' in stub)) return stub;
  if (name === 'manway' && !written.given.has('davit'))
    return { due: 'davit', why: 'the weight of its davit or hinge, or `none`' };
  const studs = boltSetBody(size);
  if (!studs) return noStud(size);
  const body = (s: Sizes, thicker?: number): Nozzle | Manway => {
    const nozzle = nozzleBody(flangeBody(size, form, stub, thicker), form, stub, s);
    if (name === 'nozzle') return nozzle;
    return { kind: 'manway', nozzle, cover: flangeBody(size, 'blind', null, thicker), studs };
  };
  return {
    make: (s) => body(s),
    least: (s) => body(s, 0),
    drilled: drilled(size) * (name === 'manway' ? 2 : 1),
    ...listedOver(size, name === 'manway' ? [form, 'blind'] : [form], stub),
    source: flangeSource(size),
    assumptions: [thickest, ...(written.words.form ? [] : ['its flange a weld neck, since nothing else is said'])],
    material: steelOf(written.words.schedule),
  };
}

/** The pipe ends at the weld of a weld neck; into a slip on flange it runs up to the gasket face, and its bore is the pipe's. */
function nozzleBody(flange: Flange, form: FlangeForm, { outside, wall }: Pipe, sizes: Sizes): Nozzle {
  const long = flange.thickness + flange.faceHeight + flange.hubLength;
  const projection = sizeOf(sizes, 'projection') ?? 0;
  const [padOutside, padThickness] = sidesOf(sizes, 'pad');
  const pad =
    padOutside !== undefined && padThickness !== undefined
      ? { pad: { outside: padOutside, thickness: padThickness } }
      : {};
  const pipeLength = form === 'weld neck' ? projection - long : projection;
  return { kind: 'nozzle', flange, outside, wall, pipeLength, projection, ...pad };
}
