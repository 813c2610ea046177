// The page comes with the Bench in it; on the way to another place it stays out of sight until the app has drawn that.
if (location.hash.length > 2) document.documentElement.dataset.elsewhere = '';
