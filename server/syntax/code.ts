// Reads the words of a line: keyword, name, colon, value, clauses. What cannot be read costs only its own clause.
import { hiddenIn } from './characters.ts';
import { coloursOf } from './colours.ts';
import { doubtful } from './numbers.ts';
import { type Phrase, anyKeywordAt, clauseAt, keywordAt, nearestPhrases, phraseOf, spelled } from './phrases.ts';
import { type Repair, repaired, repairsFor } from './repairs.ts';
import { type Scanned, type Token, isWordSign, scan } from './scan.ts';
import type { ClauseForm, ClauseText, ColouredSpan, KeywordUse, Language, LineProblem, NameUse, ReadLine, Span, StatementForm, SyntaxFacts, Value, ValueType, Words } from './types.ts';
import { type Match, nameOf, valueOf } from './values.ts';
