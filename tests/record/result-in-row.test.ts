import { describe, expect, test } from 'vitest';
import { stepsOf } from '../../src/record/file/curve-steps.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { SELF } from '../../src/record/person.ts';
import { fakeBrowser } from './fake-browser.ts';
import { recordOf, someSets } from './file/written-record.ts';
import { putRaw, rawRows } from './lock/raw-rows.ts';
import { header, idOf, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

const curveIn = (row?: Readonly<Record<string, unknown>>) => (row?.result as { readonly curve: unknown } | undefined)?.curve;

describe('the curve of a result', () => {
  test('stands as steps where it came in a record, as it is where it was measured here; both are read alike', async () => {
    const page = fakeBrowser().page();
    const store = wentWell(await openSetStore(page));
    wentWell(await (await store.records()).taken({ kind: 'here', person: SELF }, await recordOf(someSets(), [])));
    const head = header({ id: idOf(9) });
    const measured = result([rep(1)]);
    wentWell(await store.begin(head));
    wentWell(await store.end(head, { state: 'finished', result: measured }));
    const { results } = await rawRows(page.indexedDB);
    const of = (id: string) => curveIn(results?.find(({ setId }) => setId === id));
    expect(of(idOf(1))).toEqual(stepsOf(measured.curve));
    expect(of(idOf(9))).toEqual(measured.curve);
    expect(wentWell(await store.read(idOf(1))).result?.curve).toEqual({ tMs: [0, 33.3, 66.7], angleDeg: [1, null, 2.5] });
    expect(wentWell(await store.read(idOf(9))).result?.curve).toEqual(measured.curve);
  });

  test.each([
    ['half a step', { t: [0, 0.5], a: [1, 2] }],
    ['fewer angles', { t: [0, 1], a: [1] }],
    ['a text', { t: ['0'], a: [1] }],
    ['no angles', { t: [0] }],
    ['nothing', null],
    ['a time that is none', { tMs: [Number.NaN], angleDeg: [1] }],
    ['a hole in the times', { tMs: [0, null], angleDeg: [1, null] }],
  ])('of which there is %s is told of as damaged', async (_, curve) => {
    const page = fakeBrowser().page();
    const store = wentWell(await openSetStore(page));
    wentWell(await store.begin(header()));
    wentWell(await store.end(header(), { state: 'finished', result: result([rep(1)]) }));
    await putRaw(page.indexedDB, 'results', { setId: idOf(1), result: { ...result([rep(1)]), curve } });
    expect(await store.read(idOf(1))).toMatchObject({ ok: false, error: { kind: 'set-damaged', id: idOf(1) } });
    expect(JSON.stringify(await store.read(idOf(1)))).toContain('result.curve');
  });
});
