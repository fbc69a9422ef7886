// Every feature of the protocol, by what people do with it.
import { answerActing } from './features/acting.ts';
import { answerCommands } from './features/commands.ts';
import { answerFinding } from './features/finding.ts';
import { answerHierarchy } from './features/hierarchy.ts';
import { answerLayout } from './features/layout.ts';
import { answerReading } from './features/reading.ts';
import { answerTokens } from './features/tokens.ts';
import type { Session } from './session.ts';

export function answerFeatures(session: Session): void {
  answerReading(session);
  answerFinding(session);
  answerLayout(session);
  answerActing(session);
  answerCommands(session);
  if (session.announced.hierarchies) answerHierarchy(session);
  if (session.announced.tokens) answerTokens(session);
}
