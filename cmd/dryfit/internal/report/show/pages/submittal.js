// Filters the findings. Without it all of them show.
const filter = document.getElementById('filter');
const findings = [...document.querySelectorAll('article')];
const shown = document.getElementById('shown');
const apply = () => {
  const on = new Set([...filter.querySelectorAll('input:checked')].map((box) => box.value));
  const asked = filter.querySelector('input[type=search]').value.trim().toLowerCase();
  for (const f of findings) f.hidden = !on.has(f.dataset.severity) || !f.textContent.toLowerCase().includes(asked);
  const n = findings.filter((f) => !f.hidden).length;
  shown.textContent = n === findings.length ? '' : `${n} of ${findings.length} shown`;
};
if (filter) {
  filter.addEventListener('input', apply);
  filter.hidden = false;
}
