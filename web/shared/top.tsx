// The strip of the office pages: the same steel rule, and where one can go.
export function Top({ title, children }: { title: string; children?: unknown }) {
  return (
    <header class="strip">
      <svg class="rule" viewBox="0 0 384 20" preserveAspectRatio="none" aria-hidden="true">
        {ticks.map((eighth) => (
          <line
            key={eighth}
            class="tick"
            x1={eighth * 2}
            x2={eighth * 2}
            y1="0"
            y2={eighth % 8 === 0 ? 13 : eighth % 4 === 0 ? 8 : eighth % 2 === 0 ? 6 : 4}
          />
        ))}
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

const ticks = Array.from({ length: 193 }, (_, eighth) => eighth);
