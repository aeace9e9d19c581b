// Out of order by name: the list goes there, nothing between counts as done, and it comes back to what stayed open.
import { afterAll, expect, test } from 'vitest';
import { aTechnician } from '../../support/conversation.ts';

const tech = aTechnician();
afterAll(() => tech.close());

test('a step is gone to by its name, and all before it stays open', () => {
  tech.say('new job hub service');
  tech.say('tandem axle, electric brakes');
  const gone = tech.say('skip to torque');
  expect(gone.record?.currentStep).toBe('wheelsOn/torque@front');
  expect(gone.record?.steps).toEqual([]);
  expect(gone.reply.also).toContain('openBefore');
  expect(gone.record?.asked).toBeUndefined();
});

test.each([
  ['go to the brakes', 'brakeCheck/drums@front'],
  ['jump to the rear right end play', 'hubBearing/endPlay@rear.right'],
  ['take me to the road check', 'roadCheck/firstStops'],
  ['go back to make safe', 'makeSafe/park'],
  ['go to the bearing adjusting', 'hubBearing/adjust@front.left'],
])('%s', (words, step) => {
  expect(tech.say(words).record?.currentStep).toBe(step);
});

test('a step by its number, as the screen counts them', () => {
  expect(tech.say('go to step five').reply.show).toContain('step 5 of');
  expect(tech.say('go to step 2').reply.show).toContain('step 2 of');
  expect(tech.say('go to step ninety nine').reply.code).toBe('noSuchStep');
});

test('a gate that was gone to is still a gate, and what is not there is refused with what there is', () => {
  tech.say('go to torque');
  expect(tech.say('done').reply.code).toBe('valuesMissing');
  const refused = tech.say('go to alignment');
  expect(refused.reply.code).toBe('noSuchStep');
  expect(refused.reply.show).toContain('Wheels on');
  expect(refused.record?.currentStep).toBe('wheelsOn/torque@front');
});

test('a skip with a reason is still a skip', () => {
  expect(tech.say('skip, no torque wrench here').reply.code).toBe('askSkip');
});
