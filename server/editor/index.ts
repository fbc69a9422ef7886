// Holds what an editor shows and does with a plan: one file a feature, plain functions over a snapshot that answer in small records.
// Must never know a protocol, a file system, settings other than those handed in, or work an engineering figure out by itself.
// Read types.ts, items.ts and uses.ts first, then hover.ts with its folder, then any feature.
export { type Completions, complete, type Library, type Trigger } from './complete.ts';
export { definition, highlights, type Reference, references } from './definition.ts';
export { fixAll, fixes } from './fixes.ts';
export { type Fold, folding } from './folding.ts';
export { type Carrier, carriedBy, carrierAt, carries, type Link as CarrierLink, likeOf, takenBy } from './hierarchy.ts';
export { hints } from './hints.ts';
export { copyResult, type Held, hold } from './hold.ts';
export { hover } from './hover.ts';
export { level } from './level.ts';
export { type Link, links } from './links.ts';
export { idOf, marksAt, placeOf } from './marks.ts';
export { type Found, outline, symbols } from './outline.ts';
export { prepareRename, rename } from './rename.ts';
export { selection } from './selection.ts';
export { grossLoad } from './status.ts';
export { type Token, tokenModifiers, tokens, tokenTypes } from './tokens.ts';
export type { Completion, Edit, Hint, HintSettings, Hover, QuickFix, Renaming, Stretch, Symbol } from './types.ts';
