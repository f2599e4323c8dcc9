import { expect, test } from 'vitest';
import { withPart } from '../../../scripts/accuracy/report-part.ts';

const REPORT = '# Good\n\nall\n\n## Glides\n\nold\n\n## Clip by clip\n\nrows\n';

test('a part takes the place of the old one of its heading, and nothing else changes', () => {
  expect(withPart(REPORT, '## Glides\n\nnew\n')).toBe(REPORT.replace('old', 'new'));
  expect(withPart(REPORT, '## Clip by clip\n\nother\n')).toBe(REPORT.replace('rows', 'other'));
});

test('a part that is not there yet comes before the clips, and is replaced when it comes again', () => {
  const once = withPart(REPORT, '## Stickers\n\none\n');
  expect(once).toBe('# Good\n\nall\n\n## Glides\n\nold\n\n## Stickers\n\none\n\n## Clip by clip\n\nrows\n');
  expect(withPart(once, '## Stickers\n\ntwo\n')).toBe(once.replace('one', 'two'));
});

test('a report without clips, and a part without a heading, are refused', () => {
  expect(() => withPart('# Good\n', '## Stickers\n\none\n')).toThrow('withPart requires a report');
  expect(() => withPart(REPORT, 'Stickers\n')).toThrow('begins with its heading');
});
