// "Which measurement should I take again?": the one that, a mark of its tape off, would change the verdict.
import { judge, needsOf, rank, sensitivity, type Touchy, type Verdict } from '#core';
import type { Answerer } from '../types.ts';
import { candidateOf, readingsOf } from './fitment-job.ts';
import type { Voice } from './fitment-say.ts';
import { tell, wanting } from './fitment-tell.ts';
import { resultWords } from './fitment-words.ts';

export const again: Answerer = (question, job, know) => {
  const readings = readingsOf(job);
  const needs = needsOf(readings);
  const candidate = candidateOf(question, job, know) ?? rank(needs, know.stock, 1).best[0]?.candidate;
  if (!candidate)
    return tell(know, 'againUnknown', () => ({ always: ['which axle? Tell me its numbers, or ask what fits'] }), {});
  const verdict = judge(needs, candidate);
  const touchy = sensitivity(readings, candidate);
  return tell(know, touchy.length > 0 ? 'again' : 'againNone', (voice) => linesOf(verdict, touchy, voice), {
    rests: touchy.map(({ reading }) => reading.id),
    missing: verdict.result === 'cannotSayYet' ? verdict.missing : [],
  });
};

function linesOf(verdict: Verdict, touchy: readonly Touchy[], voice: Voice) {
  const now = resultWords[verdict.result].toLowerCase();
  const title = voice.text(verdict.candidate.title);
  const each = touchy.map(({ reading: { field, value, unit }, ifIt, would }) => {
    const at = (text: string) => voice.value(field, text, unit);
    return `${voice.field(field)}: ${at(value)} ${now}, ${at(ifIt)} ${resultWords[would].toLowerCase()}`;
  });
  const open = verdict.result === 'cannotSayYet' ? wanting(verdict.missing, voice) : undefined;
  const none = `none: no single measurement, one mark of its tape off, would change "${now}"`;
  const heard = verdict.unconfirmed.length > 0 ? 'values not confirmed yet are worth a second look too' : undefined;
  return { always: [...(each.length > 0 ? each : [none]), open], more: [`for ${title}`, heard] };
}
