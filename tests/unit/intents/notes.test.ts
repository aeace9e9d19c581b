// A defect noted in passing: part, side, condition, seriousness.
import { expect, it } from 'vitest';
import { readNote } from '#intents/notes';

it.each([
  ['left hanger has a hairline crack at the weld', { part: 'hanger', side: 'left', condition: 'cracked', seriousness: 'safety' }],
  ['right spring broken', { part: 'spring', side: 'right', condition: 'broken', seriousness: 'safety' }],
  ['seal is leaking on the left rear', { part: 'seal', side: 'left', axle: 'rear', condition: 'leaking', seriousness: 'wear' }],
  ['no cracks in the hangers', { part: 'hanger', condition: 'good', seriousness: 'info' }],
  ["spindle isn't bent", { part: 'spindle', condition: 'good', seriousness: 'info' }],
  ['the tires are bald but the wheels are fine', { part: 'tyre', condition: 'worn', seriousness: 'wear' }],
  ['no grease in the left hub', { part: 'hub', side: 'left', condition: 'dry', seriousness: 'wear' }],
  ['customer wants a call before we order', { seriousness: 'info' }],
  ['', { seriousness: 'info' }],
])('%s', (text, reading) => {
  expect(readNote(text)).toEqual(reading);
});
