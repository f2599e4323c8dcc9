/** What a screen shows late is waited for as long as a test may take: a busy machine must not fail one. */
if (typeof document !== 'undefined') {
  const { configure } = await import('@testing-library/react');
  configure({ asyncUtilTimeout: 30_000 });
}

export {};
