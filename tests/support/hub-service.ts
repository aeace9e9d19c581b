// What is said in the shortest hub service, line by line.
import { readFileSync } from 'node:fs';

const script = readFileSync(new URL('../acceptance/conversations/shortest-hub-service.txt', import.meta.url), 'utf8');
export const hubServiceLines = script.split('\n').flatMap((line) => (line.startsWith('> ') ? [line.slice(2)] : []));
