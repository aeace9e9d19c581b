// The ticks of a steel rule: an inch is 16 units wide, with its halves, quarters and eighths.
export function Ticks({ inches }: { inches: number }) {
  return (
    <>
      {Array.from({ length: inches * 8 + 1 }, (_, eighth) => (
        <line key={eighth} class="tick" x1={eighth * 2} x2={eighth * 2} y1="0" y2={lengthOf(eighth)} />
      ))}
    </>
  );
}

function lengthOf(eighth: number): number {
  if (eighth % 8 === 0) return 13;
  if (eighth % 4 === 0) return 8;
  return eighth % 2 === 0 ? 6 : 4;
}
