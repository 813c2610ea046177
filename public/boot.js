// The page comes with the Bench in it; on the way to another place it stays out of sight until the app has drawn that.
if (location.hash.length > 2) document.documentElement.dataset.elsewhere = '';
// The room that stood above the tasks last time (src/app/bench/Room.tsx); on the first day, that of the first steps.
try {
  const firstDay = { news: 220, due: 0 }; // px
  for (const name of ['news', 'due']) {
    const room = localStorage.getItem(`minim-${name}`) ?? firstDay[name];
    document.documentElement.style.setProperty(`--${name}`, `${Number(room)}px`);
  }
} catch {
  // no localStorage here
}
