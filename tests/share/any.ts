import fc from 'fast-check';
import * as v from 'valibot';
import { yardFile, type YardFile } from '../../src/lib/share';
import { YardSchema, type Yard } from '../../src/lib/yard';
import { anyMoment, anyYard } from '../yard/random';

/** Names that somebody might give to do harm, and names that merely look odd. */
export const hostileNames = [
  '<img src=x onerror=alert(1)>',
  '</metadata></svg><script>alert(1)</script>',
  ']]><svg onload="alert(1)">',
  '=HYPERLINK("//x","y")',
  '\u202egnp.drawkcab\u2066',
  '"; DROP TABLE yards; --',
  '&lt;&#60;&amp;',
  '\u0000\u0007\u001b[31m\r\n\t',
  '\ud800 alone \udc00',
  '\ufffe\uffff\ufeff',
  '👩‍🔧 Überholgleis 雨',
  '__proto__',
  ' ',
  ''
] as const;

/** Texts that some check of the schema may ask for: sizes of wire, roads. */
const known = [
  '24/0.2',
  '7/0.2',
  '0.5 mm²',
  'AWG 22',
  'A',
  'B',
  'Q',
  'R',
  '1',
  '2',
  'feed',
  'return'
];

interface Schema extends v.GenericSchema {
  readonly entries?: Readonly<Record<string, Schema>>;
  readonly wrapped?: Schema;
  readonly options?: readonly unknown[];
  readonly literal?: unknown;
  readonly item?: Schema;
  readonly key?: Schema;
  readonly value?: Schema;
  readonly pipe?: readonly { readonly type: string; readonly requirement?: unknown }[];
}

const required = (schema: Schema, type: string): unknown =>
  schema.pipe?.find((each) => each.type === type)?.requirement;

function number(schema: Schema): fc.Arbitrary<unknown> {
  const min = (required(schema, 'min_value') as number | undefined) ?? -1e6;
  const max = (required(schema, 'max_value') as number | undefined) ?? 1e6;
  return schema.pipe?.some(({ type }) => type === 'integer')
    ? fc.integer({ min, max })
    : fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max));
}

function text(schema: Schema): fc.Arbitrary<unknown> {
  const maxLength = (required(schema, 'max_length') as number | undefined) ?? 20;
  const asked = [...known, ...hostileNames].filter((each) => v.is(schema, each));
  const free = fc.string({ unit: 'binary', maxLength }).filter((each) => v.is(schema, each));
  const picky = schema.pipe?.some(({ type }) => type === 'check' || type === 'regex') ?? false;
  if (picky) return asked.length > 0 ? fc.constantFrom(...asked) : fc.constant(undefined);
  return fc.oneof(free, fc.constantFrom(...asked));
}

/** What a schema lets in, or nearly: whatever its keys are. */
function inputFor(schema: Schema): fc.Arbitrary<unknown> {
  switch (schema.type) {
    case 'strict_object':
    case 'object':
      return fc
        .record(
          Object.fromEntries(
            Object.entries(schema.entries ?? {}).map(([key, inside]) => [key, inputFor(inside)])
          )
        )
        .filter((value) => v.is(schema, value));
    case 'optional':
      return fc.option(inputFor(schema.wrapped as Schema), { nil: undefined, freq: 2 });
    case 'picklist':
      return fc.constantFrom(...(schema.options ?? []));
    case 'union':
      return fc.oneof(...(schema.options as readonly Schema[]).map(inputFor));
    case 'literal':
      return fc.constant(schema.literal);
    case 'boolean':
      return fc.boolean();
    case 'number':
      return number(schema);
    case 'string':
      return text(schema);
    case 'array':
      return fc.array(inputFor(schema.item as Schema), { maxLength: 2 });
    case 'record':
      return fc.dictionary(
        fc.constantFrom(...known.filter((each) => v.is(schema.key as Schema, each))),
        inputFor(schema.value as Schema),
        { maxKeys: 3 }
      );
    default:
      throw new Error(`No samples for a schema of type '${schema.type}': add them here.`);
  }
}

/** Anything that the yard's schema lets in, complete; it follows the schema as keys are added. */
export const anyFullYard: fc.Arbitrary<Yard> = inputFor(YardSchema as unknown as Schema)
  .map((input) => v.safeParse(YardSchema, input))
  .filter(({ success }) => success)
  .map(({ output }) => output as Yard);

const anyName = fc.oneof(
  fc.constantFrom(...hostileNames),
  fc.string({ unit: 'binary', maxLength: 60 })
);

/** Any file: a yard with any values, or a plain yard with a moment of it, under its own name or another. */
export const anyFile: fc.Arbitrary<YardFile> = fc
  .record(
    {
      moment: fc.oneof(
        anyFullYard.map((yard) => ({ yard })),
        anyMoment(anyYard)
      ),
      name: anyName
    },
    { requiredKeys: ['moment'] }
  )
  .map(({ moment, name }) => yardFile({ ...moment, ...(name !== undefined && { name }) }));

/** The demo yard under a name of its own. */
export const quay = yardFile({
  yard: v.parse(YardSchema, {
    name: 'Quillby Quay, improved',
    deckRoads: 5,
    stablingRoads: 4,
    runningRoad: 'interlocked'
  })
});
