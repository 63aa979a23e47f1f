/** A part that sits in a hole of a panel, mm. */
export interface PanelPart {
  /** Hole to drill. */
  readonly holeMm: number;
  /** Room it takes, before or behind the panel, whichever is more. */
  readonly bodyMm: { readonly width: number; readonly height: number };
  readonly source: string;
}

const square = (side: number): PanelPart['bodyMm'] => ({ width: side, height: side });

/** What sits in a panel. The maker's data win. */
export const panelParts = {
  toggle: {
    holeMm: 6.4,
    bodyMm: square(13.5),
    source: 'miniature, bush 6 mm or 1/4 in: hole 6.2 to 6.5 mm, common practice; body from memory'
  },
  push: {
    holeMm: 12,
    bodyMm: square(17),
    source: 'sprung push: hole common practice; nut and body from memory'
  },
  rotary: {
    holeMm: 10,
    bodyMm: square(32),
    source:
      'rotary selector of 12 positions: hole 10 mm (3/8 in), common practice; body from memory'
  },
  lamp: {
    holeMm: 6,
    bodyMm: square(9),
    source: '3 mm LED in a metal bezel: hole common practice; nut from memory'
  },
  screw: { holeMm: 3.5, bodyMm: square(8), source: 'screw of 3 mm or No. 4: from memory' }
} as const satisfies Readonly<Record<string, PanelPart>>;

/** A kind of part in a panel. */
export type PanelPartKind = keyof typeof panelParts;

/** Room between the parts of a panel, middle to middle, mm. Source: common practice (toggles 20 to 25 apart, a lamp 10 to 12 from its toggle, 15 to the frame). */
export const panelRoom = { pitchMm: 22, lampMm: 12, frameMm: 15 } as const;
