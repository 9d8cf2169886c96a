// Puts two options side by side at full size. Without it each is drawn at its place.
const pair = document.getElementById('pair');
if (pair) {
  const buttons = [...document.querySelectorAll('.look button')];
  const said = document.getElementById('chosen');
  const title = pair.querySelector('h2');
  const inside = pair.querySelector('div');
  let chosen = [];
  const tell = () => {
    for (const b of buttons) b.setAttribute('aria-pressed', chosen.includes(b));
    said.textContent = chosen.length === 1 ? `Option ${chosen[0].value} is chosen. Choose another one to see both side by side.` : said.dataset.usual;
  };
  const show = () => {
    title.textContent = `Options ${chosen[0].value} and ${chosen[1].value}`;
    inside.replaceChildren(...chosen.map((b) => {
      const copy = b.closest('.look').cloneNode(true);
      copy.querySelector('button').remove();
      return copy;
    }));
    pair.showModal();
  };
  for (const b of buttons) {
    b.hidden = false;
    b.addEventListener('click', () => {
      chosen = chosen.includes(b) ? chosen.filter((c) => c !== b) : [...chosen, b];
      tell();
      if (chosen.length === 2) show();
    });
    const picture = b.closest('.look').querySelector('svg');
    picture.classList.add('chooses');
    picture.addEventListener('click', () => b.click());
  }
  pair.querySelector('button').addEventListener('click', () => pair.close());
  pair.addEventListener('close', () => {
    chosen = [];
    inside.replaceChildren();
    tell();
  });
  tell();
  said.hidden = false;
}
