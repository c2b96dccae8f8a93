import { describe, expect, it } from 'vitest';
import { partsCsv, partsText, type PartRow, type PartsList } from '../../../../shared/visit/index.ts';

const write = (value: number, unit: string): string => `${value} ${unit}`;
const row = (more: Partial<PartRow>): PartRow => ({
  key: 'k',
  name: 'hub seal',
  needs: [{ line: 'l', place: 'left front' }],
  identity: [],
  measureFirst: [],
  onlyIf: false,
  state: 'order',
  price: null,
  ...more,
});
const list = (...rows: PartRow[]): PartsList => ({ rows, warnings: [] });

/** Reads values back as RFC 4180 says: quotes doubled, records end in CR LF. */
function readCsv(text: string): string[][] {
  const records: string[][] = [[]];
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  while (at < text.length) {
    expect(text[at]).toBe('"');
    let field = '';
    for (at += 1; ; at += 1) {
      if (text[at] !== '"') field += text.charAt(at);
      else if (text[at + 1] === '"') field += text.charAt((at += 1));
      else break;
    }
    records.at(-1)!.push(field);
    at += 1;
    if (text[at] === ',') at += 1;
    else {
      expect(text.slice(at, at + 2)).toBe('\r\n');
      at += 2;
      if (at < text.length) records.push([]);
    }
  }
  return records;
}

describe('[PLN-13] the list as comma-separated values', () => {
  it('is read back as it was, with quotes, commas and line ends in a field', () => {
    const name = 'seal, "wide"\r\nsecond line';
    const records = readCsv(partsCsv(list(row({ name, price: 41.5 }), row({ name: 'drum' })), write));
    expect(records).toHaveLength(3);
    expect(records.every((fields) => fields.length === 7)).toBe(true);
    expect(records[1]).toEqual([name, '1', 'left front', 'order', '', '', '41.5']);
  });
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', ' =1', '\u00a0=1', '＝1', '＋1', '|cmd', '%0A'])(
    'a field %j cannot run as a formula',
    (bad) => {
      const records = readCsv(partsCsv(list(row({ name: bad, needs: [{ line: 'l', place: bad }] })), write));
      expect(records[1]![0]).toBe(`'${bad}`);
      expect(records[1]![2]).toBe(`'${bad}`);
    },
  );
  it('says what is not opened yet', () => {
    const records = readCsv(partsCsv({ rows: [], warnings: ['Not opened yet: hub.'] }, write));
    expect(records[1]?.[0]).toBe('Not opened yet: hub.');
  });
});

it('[PLN-11] the list as text names number, state, places, what was measured and what is still to be', () => {
  const identity = [
    {
      id: 'shaft-diameter',
      ask: 'Shaft',
      kind: 'length' as const,
      found: [{ place: 'left front', value: { value: 4.5, unit: 'in' }, at: '', by: '' }],
    },
  ];
  const text = partsText(list(row({ identity, measureFirst: ['Bore: left front'], state: 'measure' })), write);
  expect(text).toBe(
    '1 × hub seal [measure before ordering]: left front. Shaft, left front: 4.5 in. measure before ordering: Bore: left front',
  );
});
