// Holds the files, open texts and snapshots: the only room with memory. Must never know a protocol, a file system or words on screen.
// Read types.ts, then workspace.ts and snapshot.ts; memory.ts is for tests.

export type { Replaced } from './document.ts';
export { memoryFiles } from './memory.ts';
export { joined, notRelative } from './paths.ts';
export { snapshotOf } from './snapshot.ts';
export { type Counts, Survey } from './survey.ts';
export type { Files, Snapshot, Spot, TextChange } from './types.ts';
export { mostBytes } from './types.ts';
export { Workspace } from './workspace.ts';
