// The page comes with the Bench in it; on the way to another place it stays out of sight until the app has drawn that.
if (location.hash.length > 2) document.documentElement.dataset.elsewhere = '';
// The room that stood above the tasks last time: src/app/News.tsx.
try {
  document.documentElement.style.setProperty('--news', `${Number(localStorage.getItem('minim-news'))}px`);
} catch {
  // no localStorage here
}
