// The server's way in as a program of its own.
import { start } from './node.ts';

start();
