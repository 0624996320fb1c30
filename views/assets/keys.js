/* Arrow keys and space press the link or button that names them, so that hands full of paper can go on and back. Pages work without it. */
{
  const isOwn = ({ target, key }) =>
    target instanceof HTMLElement &&
    (target.isContentEditable ||
      /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName) ||
      (key === ' ' && /^(BUTTON|SUMMARY)$/.test(target.tagName)));

  document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey || event.repeat || isOwn(event))
      return;
    const name = event.key === ' ' ? 'Space' : event.key;
    if (!/^(Space|ArrowLeft|ArrowRight)$/.test(name)) return;
    const named = document.querySelector(`[data-keys~="${name}"]`);
    if (!named) return;
    event.preventDefault();
    named.click();
  });
}
