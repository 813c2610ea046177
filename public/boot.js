// The page comes with the Bench in it; on the way to another place it stays out of sight until the app has drawn that.
if (location.hash.length > 2) document.documentElement.dataset.elsewhere = '';
try {
  const root = document.documentElement;
  // The room that stood above the tasks last time (src/app/bench/Room.tsx); on the first day, that of the first steps.
  const firstDay = { news: 220, due: 0 }; // px
  for (const name of ['news', 'due']) {
    const room = localStorage.getItem(`minim-${name}`) ?? firstDay[name];
    root.style.setProperty(`--${name}`, `${Number(room)}px`);
  }
  // Day or night and the hand, as they were last time (src/app/nav/look.ts): no light page before a dark one.
  const theme = localStorage.getItem('minim-theme');
  const hand = localStorage.getItem('minim-hand');
  if (hand === 'left' || hand === 'right') root.dataset.hand = hand;
  const bar = new Map([
    ['light', '#f3efe4'],
    ['dark', '#16120e'],
  ]).get(theme);
  if (bar) {
    root.dataset.theme = theme;
    for (const meta of document.querySelectorAll('meta[name="theme-color"]')) meta.content = bar;
  }
} catch {
  // no localStorage here
}
