// The strip of the office pages: the same steel rule, and where one can go.
import { Ticks } from './rule.tsx';

export function Top({ title, children }: { title: string; children?: unknown }) {
  return (
    <header class="strip">
      <svg class="rule" viewBox="0 0 384 20" preserveAspectRatio="none" aria-hidden="true">
        <Ticks inches={24} />
      </svg>
      <div class="strip-words">
        <h1 class="job-title">{title}</h1>
        <nav class="strip-links" aria-label="Pages">
          {children}
          <a class="plain" href="/log">
            Log book
          </a>
          <a class="plain" href="/">
            Bay
          </a>
        </nav>
      </div>
    </header>
  );
}
