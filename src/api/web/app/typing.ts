/** Patience with who types: nobody is told off in mid-word. */

/** Rest after which a field counts as typed although the cursor is still in it, in ms on top of the pause of a change. */
const REST = 1500;

/**
 * Tells at once, unless the cursor is in a text field of one of the places: then when it leaves, or after a rest.
 * @param places - JSON Pointers, by which the fields are named.
 * @param call - Once it is given up, nothing is told.
 */
export function whenTyped(places: readonly string[], call: AbortSignal, tell: () => void): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement && field.type === "text" && places.includes(field.name))) {
    tell();
    return;
  }
  const once = () => {
    clearTimeout(rest);
    field.removeEventListener("blur", once);
    if (!call.aborted) tell();
  };
  const rest = setTimeout(once, REST);
  field.addEventListener("blur", once);
}
