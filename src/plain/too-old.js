// In the oldest words of the language, and no module: it must run where the rest does not. The words stand in index.html.
(() => {
  var page = document.getElementById('too-old');
  var root = document.getElementById('root');
  var fromDisk = document.getElementById('from-disk');
  function show() {
    if (page) page.removeAttribute('hidden');
  }
  function showIfEmpty() {
    if (root && !root.firstChild) show();
  }
  if (!page || !root) return;
  // Browsers run no modules from a folder, and say so to nobody.
  if (window.location.protocol === 'file:') {
    if (fromDisk) fromDisk.removeAttribute('hidden');
    return;
  }
  if (!('noModule' in document.createElement('script')) || !window.indexedDB || !window.WebAssembly || !window.Promise) {
    show();
    return;
  }
  // A script that is written in newer words than the browser knows fails as a whole, and nothing is drawn.
  window.addEventListener('error', showIfEmpty);
  window.addEventListener('unhandledrejection', showIfEmpty);
})();
