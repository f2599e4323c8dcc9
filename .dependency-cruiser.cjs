/** The folders of src in the order of the data flow: each imports only units, result and the folders before it. */
const FLOW = [
  'capture',
  'pose',
  'flow',
  'stickers',
  'signal',
  'angles',
  'reps',
  'exercises',
  'measure',
  'compare',
  'symptoms',
  'dose',
  // Stores what symptoms and dose define, hence after them. Compare and dose read sets by their shape, not from the store.
  'record',
  'fhir',
  'sync',
  'report',
  'run',
];
/** Folders that hold no React, storage, worker or browser code. */
const PURE = [
  'flow',
  'stickers',
  'signal',
  'angles',
  'reps',
  'exercises',
  'measure',
  'compare',
  'symptoms',
  'dose',
  'fhir',
  'sync',
];
const IMPURE_PACKAGES = [
  'react',
  'react-dom',
  'react-aria-components',
  'wouter',
  'zustand',
  'dexie',
  'comlink',
  'mediabunny',
  '@mediapipe/tasks-vision',
];

const anyOf = (names) => `(${names.join('|')})`;
const VOCABULARY = '^src/(units|result)\\.ts$';

const onlyBackwards = FLOW.map((folder, i) => ({
  name: `${folder}-imports-only-what-comes-before`,
  comment: `src/${folder} imports units, result and: ${FLOW.slice(0, i).join(', ') || 'nothing else'}.`,
  severity: 'error',
  from: { path: `^src/${folder}/` },
  to: { path: '^src/', pathNot: [VOCABULARY, `^src/${anyOf(FLOW.slice(0, i + 1))}/`] },
}));

module.exports = {
  forbidden: [
    ...onlyBackwards,
    {
      name: 'vocabulary-imports-nothing',
      severity: 'error',
      from: { path: VOCABULARY },
      to: {},
    },
    {
      name: 'screens-and-cli-are-not-imported',
      severity: 'error',
      from: { path: '^(src|scripts|models)/', pathNot: '^src/(screens|cli)/' },
      to: { path: '^src/(screens|cli)/' },
    },
    {
      name: 'screens-and-cli-stand-apart',
      severity: 'error',
      from: { path: '^src/(screens|cli)/' },
      to: { path: '^src/(screens|cli)/', pathNot: '^src/$1/' },
    },
    {
      name: 'only-screens-and-cli-run',
      severity: 'error',
      from: { path: '^(src|scripts|models)/', pathNot: '^src/(screens|cli|run)/' },
      to: { path: '^src/run/' },
    },
    {
      name: 'pure-folders-stay-pure',
      comment: 'The same functions run live, on files and on recordings; time, seed and ids are arguments.',
      severity: 'error',
      from: { path: `^src/${anyOf(PURE)}/` },
      to: { path: `(^|/)node_modules/${anyOf(IMPURE_PACKAGES)}(/|$)` },
    },
    {
      name: 'pure-folders-use-no-node',
      severity: 'error',
      from: { path: `^src/${anyOf(PURE)}/` },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'the-app-uses-no-node',
      comment: 'Only the command line runs in Node.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-folder-of-another-name',
      comment: 'A new folder under src gets its place in the order first.',
      severity: 'error',
      from: {},
      to: { path: '^src/', pathNot: [VOCABULARY, '^src/[^/]+\\.d\\.ts$', `^src/${anyOf([...FLOW, 'screens', 'cli'])}/`] },
    },
    { name: 'no-cycle', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'everything-resolves',
      comment: 'A package of types alone has no module to find; the type check finds it.',
      severity: 'error',
      from: { path: '^src/' },
      to: { couldNotResolve: true, pathNot: '^@medplum/fhirtypes$' },
    },
    {
      name: 'no-undeclared-package',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'undetermined'] },
    },
    {
      name: 'no-orphan',
      comment: 'A module that nothing imports and that imports nothing is left over.',
      severity: 'error',
      from: { orphan: true, path: '^src/', pathNot: ['\\.d\\.ts$', VOCABULARY, '^src/cli/page\\.ts$', '^src/plain/'] },
      to: {},
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'browser', 'default'] },
  },
};
