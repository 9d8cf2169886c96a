// Lets the keyboard reach what scrolls, and nothing else.
const scrollers = [...document.querySelectorAll('.scroll')];
const reach = () => {
  for (const s of scrollers) {
    if (s.scrollWidth > s.clientWidth) s.tabIndex = 0;
    else s.removeAttribute('tabindex');
  }
};
addEventListener('resize', reach);
reach();
