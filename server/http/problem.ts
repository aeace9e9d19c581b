// Every error the server gives: code, status, words. One table, so that none is without a next step.
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { LogFault } from '#log';
import type { ErrorBody } from '#wire';

type Row = readonly [status: ContentfulStatusCode, message: string, whatToDo: string];

const problems = {
  badRequest: [400, 'The request is not what this address takes.', 'Send what the message names.'],
  notJson: [400, 'The body is not JSON.', 'Send JSON, with Content-Type application/json.'],
  unpaired: [401, 'This device is not paired with the shop.', 'Open /pair and give the code from the shop computer.'],
  wrongCode: [403, 'That code is not right, or its time is over.', 'Look at the code again, or have a new one made.'],
  pairingLocked: [429, 'Too many wrong codes; all open codes are void.', 'Have a new code made at the shop computer.'],
  notAllowed: [403, 'This device may not do that.', 'Do it at a desk, or pair this device as a desk.'],
  wrongOrigin: [
    403,
    'The request does not come from a page of this server.',
    'Use the page at the address that the server printed.',
  ],
  wrongHost: [421, 'This server does not go by that name.', 'Use the address that the server printed.'],
  tooMany: [429, 'Too many requests.', 'Wait a moment, then go on.'],
  noSuchDevice: [404, 'There is no such device.', 'Load the list again.'],
  badStock: [422, 'The list of axles has faults; nothing of it was taken.', 'Mend the rows that the message names.'],
  notFound: [404, 'There is nothing at this address.', 'Start from the first page.'],
  wrongMethod: [405, 'This address does not take that method.', 'Use one that the Allow header names.'],
  noSuchJob: [404, 'There is no job with that number.', 'Look it up in the log book.'],
  stale: [409, 'The job has changed since you looked.', 'Look at it again, then repeat the change.'],
  idReused: [422, 'That id was already used for something else.', 'Send it under a new id.'],
  deskRefused: [422, 'That cannot be done to this job.', 'See the message.'],
  tooLarge: [413, 'That is too long.', 'Say it in shorter pieces.'],
  badRange: [416, 'The file has no such part.', 'Ask for the whole file.'],
  notHttp: [400, 'That is no HTTP request.', 'Use a browser, or http as its standard has it.'],
  brokenOff: [408, 'The request did not come to its end.', 'Look at the Wi-Fi, then send it again.'],
  headTooLarge: [
    431,
    'The head of the request is too long.',
    'Send fewer or shorter header lines; in a browser, clear the cookies.',
  ],
  internal: [
    500,
    'Something went wrong on the server; nothing of this was kept.',
    'Say it again. If it stays, restart the server.',
  ],
} as const satisfies Record<string, Row>;

export type ProblemCode = keyof typeof problems;

/** An error reply. `detail` takes the place of the general message. */
export function problem(c: Context, code: ProblemCode, detail?: string): Response {
  const { status, body } = problemBody(code, detail);
  return c.json(body, status);
}

/** The same where there is no request to answer. */
export function problemBody(code: ProblemCode, detail?: string): { status: ContentfulStatusCode; body: ErrorBody } {
  const [status, message, whatToDo]: Row = problems[code];
  return { status, body: { error: { code, message: detail ?? message, whatToDo } } };
}

/** What was thrown, as a reply: a fault of the log keeps its words, anything else says nothing about the inside. */
export function problemOf(c: Context, error: unknown): Response {
  if (!(error instanceof LogFault)) return problem(c, 'internal');
  const { code, message, whatToDo } = error;
  return c.json<ErrorBody>({ error: { code, message, whatToDo } }, 503);
}
