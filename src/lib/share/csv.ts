/** What a sheet may take for the start of a formula; the wide forms count too. Source: common practice. */
const FORMULA = /^[\s]*[=+\-@\uff0b\uff0d\uff1d\uff20]|^[\t\r\n]/u;

/** A cell: a number as it is; a text that a sheet could run gets an apostrophe before it. */
function cell(value: string | number): string {
  const text = typeof value === 'string' && FORMULA.test(value) ? `'${value}` : String(value);
  return /[",;\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Rows as comma-separated values, each line ended by CR LF. No cell can be run as a formula.
 * Source: RFC 4180, section 2.
 */
export const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
