// Plain shapes to SVG.
import type { Picture, Shape } from './shapes.ts';

export function Drawing({ picture, className }: { picture: Picture; className?: string }) {
  const { width, height, title, shapes } = picture;
  return (
    <svg class={`drawing ${className ?? ''}`} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
      <defs>
        <marker id="arrow" viewBox="0 0 8 8" refX="7.5" refY="4" markerWidth="7" markerHeight="7" orient="auto-start-reverse">
          <path d="M0 0.8 8 4 0 7.2z" class="arrowhead" />
        </marker>
      </defs>
      {shapes.map((shape, index) => (
        <Figure key={`${shape.is}${index}`} shape={shape} />
      ))}
    </svg>
  );
}

function Figure({ shape }: { shape: Shape }) {
  switch (shape.is) {
    case 'box':
      return <rect class={shape.role} x={shape.x} y={shape.y} width={shape.width} height={shape.height} rx={shape.radius ?? 0} />;
    case 'circle':
      return <circle class={shape.role} cx={shape.at[0]} cy={shape.at[1]} r={shape.radius} />;
    case 'line': {
      const end = shape.arrows ? { 'marker-end': 'url(#arrow)' } : {};
      const start = shape.arrows === 'both' ? { 'marker-start': 'url(#arrow)' } : {};
      const [x1, y1] = shape.from;
      const [x2, y2] = shape.to;
      return <line class={shape.role} x1={x1} y1={y1} x2={x2} y2={y2} {...start} {...end} />;
    }
    case 'text':
      return (
        <text
          class={shape.role}
          x={shape.at[0]}
          y={shape.at[1]}
          font-size={shape.size ?? 3}
          text-anchor={shape.anchor ?? 'middle'}
        >
          {shape.text}
        </text>
      );
  }
}
