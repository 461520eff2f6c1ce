// Plain old script, run before the page proper: says so where the page cannot run at all, and stays
// silent otherwise. It must parse in any browser, so no modern syntax.
(() => {
  function missing() {
    if (!('noModule' in document.createElement('script'))) return 'it cannot load script modules';
    if (typeof Worker === 'undefined') return 'it has no background workers to compute in';
    if (typeof structuredClone === 'undefined') return 'it lacks structuredClone, of 2022';
    if (!('IntersectionObserver' in window)) return 'it lacks IntersectionObserver, of 2019';
    if (typeof Array.prototype.toSorted === 'undefined') return 'it lacks toSorted, of 2023';
    return '';
  }
  function say(text) {
    var place = document.getElementById('loading');
    if (!place) return;
    place.setAttribute('role', 'alert');
    place.textContent = text;
  }
  document.addEventListener('DOMContentLoaded', () => {
    var what = missing();
    if (what) {
      window.unfit = true;
      say(
        'This browser is too old for the page: ' +
          what +
          '. Any current browser will do; ' +
          'the command line gives the same answer without one.',
      );
    } else if (location.protocol === 'file:') {
      say(
        'Browsers do not run pages of this kind straight from a file. Serve this folder instead, ' +
          'for example with "npx vite preview" or "python3 -m http.server --bind 127.0.0.1", and ' +
          'open the address shown. Nothing leaves this machine either way.',
      );
    }
  });
})();
