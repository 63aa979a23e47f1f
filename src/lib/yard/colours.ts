import * as v from 'valibot';
import { colourCodes, colourSchemes, type ColourCode, type ColouredWire } from '../tables';

const codes = Object.keys(colourCodes) as ColourCode[];
const schemes = [
  'none',
  ...(Object.keys(colourSchemes) as (keyof typeof colourSchemes)[])
] as const;
const colour = v.optional(v.picklist(codes, codes.join(', ')));

/** Colours of the wires: as a scheme has them, but for those which the owner sets. */
export const ColoursSchema = v.pipe(
  v.strictObject({
    scheme: v.optional(v.picklist(schemes, schemes.join(', ')), 'none'),
    feed: colour,
    return: colour,
    lampFeed: colour,
    lampReturn: colour
  }),
  v.transform(({ scheme, ...own }) => ({
    scheme,
    ...(scheme === 'none' ? {} : colourSchemes[scheme]),
    ...(Object.fromEntries(Object.entries(own).filter(([, code]) => code)) as typeof own)
  }))
);

const wires: readonly (readonly [ColouredWire, string])[] = [
  ['feed', 'feed'],
  ['return', 'return'],
  ['lampFeed', 'lamp feed'],
  ['lampReturn', 'lamp return']
];

/** A wire whose colour is settled. */
interface Coloured {
  readonly wire: ColouredWire;
  /** "lamp feed". */
  readonly name: string;
  readonly code: ColourCode;
  /** "yellow". */
  readonly colour: string;
}

/** The wires of a yard whose colours are settled; those of lamps only where it has lamps. */
export const wireColours = ({
  colours,
  lamps
}: {
  readonly colours: v.InferOutput<typeof ColoursSchema>;
  readonly lamps: string;
}): readonly Coloured[] =>
  wires.flatMap(([wire, name]) => {
    const code = colours[wire];
    if (code === undefined || (wire.startsWith('lamp') && lamps === 'none')) return [];
    return [{ wire, name, code, colour: colourCodes[code] }];
  });
