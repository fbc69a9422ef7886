// Sizes that no solid can have.
import { share, words } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import type { Asked } from '../types.ts';

export const geometryImpossible = check({
  slug: 'geometry-impossible',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) => {
    const [a = 0, b = 0] = facts.figures;
    const why = reasons[facts.reason]?.(a, b, system) ?? 'its sizes are at odds with each other';
    const cannot = facts.reason === 'does-not-fit' ? 'cannot lie there' : 'cannot be made';
    return `This ${facts.shape} ${facts.shape === 'mesh' ? 'gives no weight' : cannot}: ${why}.`;
  },
});

type Reason = (a: number, b: number, system: Asked['system']) => string;

/** Two lengths in one unit, put into a sentence. */
const lengths =
  (say: (a: string, b: string) => string): Reason =>
  (a, b, system) =>
    say(...figures(system).unlike('m', a, b));
const which = (hole: number): string => (hole < 0 ? 'its outline' : `its hole ${ordinal(hole)}`);
const ordinal = (index: number): string => `${index + 1}`; // counted from 1 as a reader does

const one = (count: number, single: string, several: string): string => (count === 1 ? single : several);
const inRow = (row: number): string => (row > 0 ? ` (row ${row} of the file)` : '');

/** By the word the solids give for what is wrong, with the two figures at odds. */
const reasons: Readonly<Record<string, Reason>> = {
  'not-above-zero': (a, _, system) => `a size of ${figures(system).any('m', a)} leaves nothing of it`,
  'below-zero': (a, _, system) => `a size cannot be ${figures(system).any('m', a)}`,
  'walls-meet': lengths((wall, outside) => `two walls of ${wall} do not fit in ${outside} outside`),
  'bore-not-inside': lengths((bore, outside) => `a bore of ${bore} does not fit in ${outside} outside`),
  'bend-too-tight': lengths(
    (radius, half) =>
      `a bend radius of ${radius} is less than the ${half} from the middle of the section to its inside`,
  ),
  'angle-too-large': (a, b, system) => {
    const [angle, most] = figures(system).unlike('rad', a, b);
    return `it cannot turn by ${angle}; the most is ${most}`;
  },
  'too-few-corners': (a, b) => `${words(a, 'corner')} make no outline, it takes ${words(b, 'corner')}`,
  'crosses-itself': (hole) => `${which(hole)} crosses or touches itself`,
  'hole-outside-outline': (hole) => `${which(hole)} reaches outside the outline`,
  'holes-overlap': (a, b) => `its holes ${ordinal(a)} and ${ordinal(b)} overlap`,
  'ring-closed': lengths((section, mean) => `a section of ${section} closes the ring of ${mean} over its middle`),
  'knuckle-too-large': lengths(
    (radius, half) => `a knuckle radius of ${radius} is more than half the inside diameter, ${half}`,
  ),
  'crown-too-small': lengths(
    (radius, half) => `a crown radius of ${radius} is less than half the inside diameter, ${half}`,
  ),
  'across-axis': (a, _, system) => `a corner with the radius ${figures(system).any('m', a)} lies beyond the axis`,
  'segment-too-high': lengths((height, diameter) => `a height of ${height} is more than the diameter, ${diameter}`),
  'branch-too-short': lengths((length, half) => `a branch of ${length} ends in the run, ${half} from its middle`),
  'projection-too-short': lengths(
    (projection, least) => `a projection of ${projection} ends before its flange does, which is ${least} long`,
  ),
  'pad-inside': lengths((pad, outside) => `a pad of ${pad} does not reach beyond the pipe, ${outside} outside`),
  'bolt-too-short': lengths(
    (length, stack) => `a length of ${length} leaves no room for its nuts and washers, which take up ${stack}`,
  ),
  'line-too-short': (corners) => `${words(corners, 'corner')} make no line, it takes two`,
  'line-stands-still': (corner) => `corners ${ordinal(corner)} and ${ordinal(corner + 1)} of its line are one point`,
  'line-doubles-back': (corner) => `its line turns back on itself at corner ${ordinal(corner)}`,
  'line-twists': () => 'led round this ring its section comes back turned and does not meet itself',
  'corner-too-tight': lengths((length, due) => `a straight of ${length} is shorter than the ${due} its corners take`),
  'root-face-too-large': lengths((face, thickness) => `a root face of ${face} leaves no bevel in ${thickness}`),
  'angle-too-steep': (a, _, system) =>
    `its angle of ${figures(system).any('rad', a)} is too steep; it has to be less than 90 deg`,
  'wound-too-tight': (share_, most) => `round wires fill at most ${share(most)} of a ring, not ${share(share_)}`,
  'coil-too-full': (wire, ring, system) => {
    const [volume, most] = figures(system).unlike('m3', wire, ring);
    return `${volume} of wire does not fit into the ${most} that its ring can hold`;
  },
  'heap-too-short': lengths((length, base) => `a length of ${length} is less than its width, ${base}`),
  'cores-too-wide': lengths((cores, width) => `cores of ${cores} together do not fit in a width of ${width}`),
  'cores-too-high': lengths((core, depth) => `cores of ${core} do not fit in a depth of ${depth}`),
  'mesh-open': (edges) =>
    `${words(edges, 'edge')} of it ${one(edges, 'has', 'have')} a face on one side only, so that it is not closed`,
  'mesh-turned': (edges) =>
    `at ${words(edges, 'edge')} of it faces meet that are turned against each other, or more than two of them`,
  'mesh-crossing': (lines) =>
    `${words(lines, 'line')} drawn through it ${one(lines, 'runs', 'run')} into it twice: bodies in it overlap or it is inside out in part`,
  'mesh-empty': () => 'its faces enclose nothing',
  'mesh-not-a-mesh': () => 'the file holds no faces in the form that its ending says',
  'mesh-cut-short': (row) => `the file ends before its faces do${inRow(row)}`,
  'mesh-runs-on': () => 'the file is longer than the number of faces that it gives',
  'mesh-curved': (row) => `it holds curved surfaces, and only flat faces are read${inRow(row)}`,
  'mesh-too-large': () => 'it has more than 2,000,000 faces',
  'mesh-bad-number': (row) => `a corner in it is not given by numbers, or is missing${inRow(row)}`,
  'mesh-no-triangles': () => 'there is no face in the file',
  'does-not-fit': (a, b, system) => {
    const [liquid, space] = figures(system).unlike('m3', a, b);
    return `${liquid} does not fit in ${space}`;
  },
};
