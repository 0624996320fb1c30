/** Lets a button copy the text that it names, where the browser can; until then the button stays hidden. */
for (const button of document.querySelectorAll('[data-copies]')) {
  if (!navigator.clipboard) continue;
  const label = button.textContent;
  button.hidden = false;
  button.addEventListener('click', async () => {
    const text = document.getElementById(button.dataset.copies).textContent;
    try {
      await navigator.clipboard.writeText(text);
      button.textContent = 'Copied';
    } catch {
      button.textContent = 'Select the text instead';
    }
    setTimeout(() => {
      button.textContent = label;
    }, 2000);
  });
}
