// Sets day or night before the first paint. The editor takes over once it runs.
(function () {
  var chosen = 'system';
  try {
    chosen = localStorage.getItem('underchassis.theme') || 'system';
  } catch {
    chosen = 'system';
  }
  var dark =
    chosen === 'dark' ||
    (chosen !== 'light' && window.matchMedia('(prefers-color-scheme: dark)').matches);
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
})();
