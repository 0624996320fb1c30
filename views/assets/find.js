/* The slash key goes to the search box, Escape leaves its answers. Everything else works without this file. */

const box = document.getElementById('find-box');
const below = () => document.querySelector('.finds-below');

const isTyping = ({ target }) =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));

document.addEventListener('keydown', (event) => {
  if (event.key === '/' && !isTyping(event) && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    box.focus();
    box.select();
  }
  if (event.key === 'Escape' && below()?.hasChildNodes()) {
    below().replaceChildren();
    box.focus();
  }
});
