import { join } from 'node:path';
import { expect, test } from 'vitest';
import { definitionsBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';

const text = `${JSON.stringify(definitionsBundle(DEFAULT_NAMING), null, 1)}\n`;

test('the definitions in docs are those of the program', async () => {
  // `npx vitest run -u` writes it anew.
  await expect(text).toMatchFileSnapshot(join(import.meta.dirname, '..', '..', 'docs', 'fhir-definitions.json'));
});

test('no code or question says positive or negative', () => {
  expect(text).not.toMatch(/positiv|negativ/i);
});

test('each code stands once in its system, each question once in its questionnaire', () => {
  for (const { resource } of definitionsBundle(DEFAULT_NAMING).entry ?? []) {
    if (resource?.resourceType === 'CodeSystem') {
      const codes = (resource.concept ?? []).map(({ code }) => code);
      expect(new Set(codes).size, resource.name).toBe(codes.length);
    }
    if (resource?.resourceType === 'Questionnaire') {
      const links = (resource.item ?? []).flatMap(({ linkId, item }) => [linkId, ...(item ?? []).map((each) => each.linkId)]);
      expect(new Set(links).size, resource.name).toBe(links.length);
    }
  }
});
