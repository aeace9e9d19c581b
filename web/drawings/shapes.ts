// A drawing as plain values, so that it can be checked without a browser. Lengths in the drawing's own units; y grows downwards.

/** What a shape stands for; the style sheet decides how each looks, never by colour alone. */
export type Role =
  | 'found'
  | 'candidate'
  | 'supposed'
  | 'steel'
  | 'tyre'
  | 'frame'
  | 'clear'
  | 'tight'
  | 'open'
  | 'next'
  | 'done'
  | 'move'
  | 'ground'
  | 'note';

export type Shape =
  | {
      readonly is: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly radius?: number;
      readonly role: Role;
    }
  | { readonly is: 'line'; readonly from: Point; readonly to: Point; readonly role: Role; readonly arrows?: 'both' | 'end' }
  | { readonly is: 'circle'; readonly at: Point; readonly radius: number; readonly role: Role }
  | {
      readonly is: 'text';
      readonly at: Point;
      readonly text: string;
      readonly role: Role;
      readonly anchor?: 'start' | 'end';
      readonly size?: number;
    };

export type Point = readonly [x: number, y: number];

export interface Picture {
  /** What it shows, in words, for those who do not see it. */
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}
