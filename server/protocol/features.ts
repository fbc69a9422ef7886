// Every feature of the protocol, by what people do with it.
import { answerActing } from './features/acting.ts';
import { answerCommands } from './features/commands.ts';
import { answerCompleting } from './features/completing.ts';
import { answerFinding } from './features/finding.ts';
import { answerHierarchy } from './features/hierarchy.ts';
import { answerLayout } from './features/layout.ts';
import { answerMoving } from './features/moving.ts';
import { answerReading } from './features/reading.ts';
import { answerTokens } from './features/tokens.ts';
import type { Session } from './session.ts';

export function answerFeatures(session: Session): void {
  answerReading(session);
  answerFinding(session);
  answerLayout(session);
  answerCompleting(session);
  answerActing(session);
  answerCommands(session);
  if (session.announced.fileDeeds) answerMoving(session);
  if (session.announced.hierarchies) answerHierarchy(session);
  if (session.announced.tokens) answerTokens(session);
}
