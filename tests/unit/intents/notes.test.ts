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
  ["lights don't work on the left", { part: 'wiring', side: 'left', condition: 'notWorking', seriousness: 'safety' }],
  ["coupler won't latch", { part: 'coupler', condition: 'notWorking', seriousness: 'safety' }],
  ['left brake not working', { part: 'brake', side: 'left', condition: 'notWorking', seriousness: 'safety' }],
  ['no dust cap on the right', { part: 'dustCap', side: 'right', condition: 'missing', seriousness: 'safety' }],
  ["bearing isn't good", { part: 'bearing', condition: 'worn', seriousness: 'wear' }],
  ['hanger not cracked', { part: 'hanger', condition: 'good', seriousness: 'info' }],
  ['cotter pin bent over', { part: 'keeper', condition: 'good', seriousness: 'info' }],
  ["didn't find any cracks", { condition: 'good', seriousness: 'info' }],
  ['customer wants a call before we order', { seriousness: 'info' }],
  ['front left hanger cracked', { part: 'hanger', side: 'left', axle: 'front', condition: 'cracked', seriousness: 'safety' }],
  ['front hub isnt cracked', { part: 'hub', axle: 'front', condition: 'good', seriousness: 'info' }],
  ['', { seriousness: 'info' }],
])('%s', (text, reading) => {
  expect(readNote(text)).toEqual(reading);
});
